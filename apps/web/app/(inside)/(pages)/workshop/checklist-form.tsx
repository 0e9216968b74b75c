'use client';

import type { SignOffChecklist } from '@pullbook/contracts';
import { useRef, useState, type FormEvent } from 'react';
import { Button } from '../../../../components/button/button';
import { Mind } from '../../../../components/marks/marks';
import { ProblemNote } from '../../../../components/marks/problem-note';
import { useNotices } from '../../../../components/notices/notices';
import { useChangeChecklist, useChecklist } from '../../../../queries/checklists/use-checklist';
import {
  addItem,
  changeItem,
  draftOf,
  faultOf,
  mostItems,
  moveItem,
  removeItem,
  wantedOf,
} from './checklist-draft';
import { ChecklistLine } from './checklist-line';
import styles from './checklist.module.css';

interface ChecklistFormProps {
  /** The list as it was when somebody began to change it. */
  readonly begun: SignOffChecklist;
  readonly onDone: () => void;
}

/** The list while it is changed: by touch and by keyboard alike, line by line. */
export function ChecklistForm({ begun, onDone }: ChecklistFormProps) {
  const change = useChangeChecklist();
  const newest = useChecklist();
  const notices = useNotices();
  const place = useRef<HTMLFormElement>(null);
  const [items, setItems] = useState(() => draftOf(begun.items));
  const [told, setTold] = useState('');
  const [isSent, setSent] = useState(false);
  const focus = (id: string) =>
    requestAnimationFrame(() => place.current?.querySelector<HTMLElement>(`[id="${id}"]`)?.focus());
  const isOvertaken = newest.data !== undefined && newest.data.revision > begun.revision && !change.isPending;

  const move = (line: string, by: -1 | 1) => {
    const next = moveItem(items, line, by);
    setItems(next);
    const at = next.findIndex((item) => item.line === line) + 1;
    setTold(next === items ? 'It cannot go further.' : `Now at place ${at} of ${next.length}.`);
    focus(`${by < 0 ? 'up' : 'down'}-${line}`);
  };
  const remove = (line: string) => {
    const at = items.findIndex((item) => item.line === line);
    setItems(removeItem(items, line));
    setTold(`Item ${at + 1} is removed from the list.`);
    focus(`up-${items[at - 1]?.line ?? ''}`);
  };
  const add = () => {
    const next = addItem(items);
    setItems(next);
    focus(`text-${next.at(-1)?.line ?? ''}`);
  };
  const submit = (event: FormEvent) => {
    event.preventDefault();
    setSent(true);
    const wrong = items.find((item) => faultOf(item) !== undefined);
    if (wrong !== undefined) return focus(`text-${wrong.line}`);
    return change.mutate(
      { revision: begun.revision, items: wantedOf(items) },
      {
        onSuccess: ({ revision }) => {
          notices.done(`Checklist saved as revision ${revision}.`);
          onDone();
        },
      },
    );
  };
  return (
    <form ref={place} onSubmit={submit} noValidate className="stack" aria-label="Change the checklist">
      {isOvertaken ? (
        <Mind title="Somebody changed this list meanwhile">
          <p>
            {newest.data?.changedBy} saved revision {newest.data?.revision}. Leave this one as it was and
            begin again from theirs.
          </p>
        </Mind>
      ) : null}
      <p>
        Items that come with the book guard an engine or a person: they can be said in your own words and
        moved, not removed. A sign-off shows their own words beside yours.
      </p>
      <ol className={styles.lines}>
        {items.map((item, index) => (
          <ChecklistLine
            key={item.line}
            item={item}
            place={{ number: index + 1, count: items.length }}
            fault={isSent ? faultOf(item) : undefined}
            onChange={(part) => setItems(changeItem(items, item.line, part))}
            onMove={(by) => move(item.line, by)}
            onRemove={() => remove(item.line)}
          />
        ))}
      </ol>
      <p className="unseen" role="status">
        {told}
      </p>
      <p>
        <Button onClick={add} disabled={items.length >= mostItems}>
          Add an item of our own
        </Button>
      </p>
      <ProblemNote error={change.error} />
      <p className="row">
        <Button type="submit" kind="act" busy={change.isPending}>
          Save as new revision
        </Button>
        <Button kind="quiet" onClick={onDone}>
          Leave it as it was
        </Button>
      </p>
    </form>
  );
}

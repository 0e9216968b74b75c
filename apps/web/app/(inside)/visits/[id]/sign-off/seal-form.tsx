'use client';

import { SignOffNew, type SignOff } from '@pullbook/contracts';
import { useState, type FormEvent } from 'react';
import { Button } from '../../../../../components/button/button';
import { CheckField } from '../../../../../components/field/check-field';
import { TextField } from '../../../../../components/field/text-field';
import { readValues } from '../../../../../components/form/read-values';
import { useDraft } from '../../../../../components/form/use-draft';
import { Empty } from '../../../../../components/marks/marks';
import { ProblemNote } from '../../../../../components/marks/problem-note';
import { useUnits } from '../../../../../components/units/use-units';
import { useSeal } from '../../../../../queries/sign-off/use-sign-off';
import { ChangedList, DataItem, itemId } from './checklist-items';
import { EvidencePart } from './evidence-part';
import { HandItem } from './hand-item';
import styles from './sign-off.module.css';

interface SealFormProps {
  readonly visitId: string;
  readonly signOff: SignOff;
}

const without = (all: ReadonlySet<string>, one: string) => new Set([...all].filter((other) => other !== one));

/** Tick what was seen, choose the presets that are covered, type the name, seal. */
export function SealForm({ visitId, signOff }: SealFormProps) {
  const units = useUnits();
  const seal = useSeal(visitId);
  const [done, setDone] = useState<ReadonlySet<string>>(new Set());
  const [begunRevision, setBegunRevision] = useState(signOff.checklistRevision);
  const [notes, setNotes] = useState<ReadonlyMap<string, string>>(new Map());
  const [left, setLeft] = useState<ReadonlySet<string>>(new Set());
  const draft = useDraft({ signedName: '' });
  const covered = signOff.presets.filter((one) => one.missing.length === 0 && !left.has(one.presetId));
  const toggle = (all: ReadonlySet<string>, one: string, isIn: boolean) =>
    isIn ? new Set([...all, one]) : without(all, one);
  const submit = (event: FormEvent) => {
    event.preventDefault();
    const read = readValues(draft.values, units, SignOffNew, (from) => ({
      items: signOff.items.map((item) => ({
        key: item.key,
        done: done.has(itemId(item)),
        note: notes.get(itemId(item)) ?? item.note,
      })),
      checklistRevision: signOff.checklistRevision ?? undefined,
      presetIds: covered.map((one) => one.presetId),
      signedName: from.text('signedName'),
    }));
    if ('faults' in read) draft.fail(read.faults);
    else seal.mutate(read.data, { onError: draft.failFrom });
  };
  const byHand = signOff.items.filter((item) => item.evidence === null);
  const open = byHand.filter((item) => !done.has(itemId(item))).length;
  return (
    <form onSubmit={submit} noValidate className={styles.form}>
      <section className="stack" aria-labelledby="proof">
        <h3 id="proof">What the pulls say</h3>
        {signOff.presets.length === 0 ? (
          <Empty title="This car has no preset to sign off.">
            <p>Agree a preset and prove it with pulls first.</p>
          </Empty>
        ) : null}
        {signOff.presets.map((evidence) => (
          <EvidencePart
            key={evidence.presetId}
            evidence={evidence}
            lead={
              <CheckField
                label={
                  <b>
                    Cover {evidence.slot} {evidence.name}, revision {evidence.revision}
                  </b>
                }
                checked={covered.includes(evidence)}
                disabled={evidence.missing.length > 0}
                onChange={(isCovered) => setLeft(toggle(left, evidence.presetId, !isCovered))}
              />
            }
          />
        ))}
      </section>
      <section className="sheet" aria-labelledby="seen">
        <h3 id="seen">What you have seen yourself</h3>
        {signOff.checklistRevision === begunRevision ? null : (
          <ChangedList onSeen={() => setBegunRevision(signOff.checklistRevision)} />
        )}
        <ul className={styles.items}>
          {signOff.items.map((item) => (
            <li key={item.key}>
              {item.evidence === null ? (
                <HandItem
                  item={item}
                  isDone={done.has(itemId(item))}
                  onDone={(isDone) => setDone(toggle(done, itemId(item), isDone))}
                  note={notes.get(itemId(item)) ?? ''}
                  onNote={(note) => setNotes(new Map([...notes, [itemId(item), note]]))}
                />
              ) : (
                <DataItem item={item} covered={covered} />
              )}
            </li>
          ))}
        </ul>
        <p className="soft small" role="status">
          {open === 0 ? 'Everything is ticked.' : `${open} of ${byHand.length} still open.`}
        </p>
      </section>
      <section className="sheet stack" aria-labelledby="sign">
        <h3 id="sign">Sign</h3>
        <p>
          With your name you say that this car is fit to leave with the settings above. The sign-off is
          sealed: it cannot be changed afterwards.
        </p>
        <TextField label="Your full name" autoComplete="name" {...draft.bind('signedName')} />
        {draft.faults['presetIds'] === undefined ? null : (
          <p className={styles.fault}>
            <span aria-hidden="true">▲ </span>No preset is covered: prove at least one first.
          </p>
        )}
        <ProblemNote error={seal.error} />
        <Button type="submit" kind="act" big busy={seal.isPending}>
          Sign off and seal
        </Button>
      </section>
    </form>
  );
}

'use client';

import { useRouter } from 'next/navigation';
import { useEffect, useId, useState, type KeyboardEvent } from 'react';
import { useSignedInMe } from '../../queries/people/use-me';
import { useSearch } from '../../queries/search/use-search';
import { useModal } from '../dialog/use-modal';
import { useSettled } from '../form/use-settled';
import { ProblemNote } from '../marks/problem-note';
import { useRemembered } from '../remembered/use-remembered';
import { entriesOf, type EntryGroup } from './entries-of';
import { FindList } from './find-list';
import styles from './finder.module.css';

const pauseMs = 120;
const steps: Readonly<Record<string, number>> = { ArrowDown: 1, ArrowUp: -1 };
const switchStates = ['on', 'off'] as const;

/** The book's index: type a plate, a name, a number, and go there. A combobox with a list, as WAI-ARIA has it. */
export function Finder({ onClose }: Readonly<{ onClose: () => void }>) {
  const [typed, setTyped] = useState('');
  const [at, setAt] = useState(0);
  const settled = useSettled(typed.trim(), pauseMs);
  const found = useSearch(settled);
  const router = useRouter();
  const me = useSignedInMe();
  const place = useModal();
  const id = useId();
  const groups = entriesOf(typed.trim() === '' ? undefined : found.data, typed, me.member.role);
  const entries = groups.flatMap((group) => group.entries);
  const chosen = Math.min(at, entries.length - 1);
  // What is listed may still be of what was typed before: its first line is not what is asked for now.
  const isStale = settled !== typed.trim() || (found.isPlaceholderData && found.isFetching);
  const [isWaiting, setWaiting] = useState(false);
  const go = (index: number) => {
    const entry = entries[index];
    if (entry === undefined) return;
    onClose();
    router.push(entry.href);
  };
  useEffect(() => {
    if (!isWaiting || isStale) return;
    setWaiting(false);
    go(chosen);
    // `go` is made anew at each render and depends on what is listed alone.
  }, [isWaiting, isStale]);
  const walk = (event: KeyboardEvent) => {
    if (event.nativeEvent.isComposing) return;
    const step = steps[event.key];
    if (step !== undefined && entries.length > 0) setAt((chosen + step + entries.length) % entries.length);
    else if (event.key !== 'Enter') return;
    else if (isStale && at === 0) setWaiting(true);
    else go(chosen);
    event.preventDefault();
  };
  return (
    <dialog
      ref={place}
      className={styles.finder}
      aria-label="Find"
      onCancel={(event) => (event.preventDefault(), onClose())}
    >
      <div className={styles.asked}>
        <input
          type="text"
          role="combobox"
          aria-label="Plate, name, telephone, visit number or page"
          aria-expanded={entries.length > 0}
          aria-controls={`${id}-list`}
          aria-autocomplete="list"
          aria-activedescendant={chosen < 0 ? undefined : `${id}-${chosen}`}
          autoComplete="off"
          spellCheck={false}
          placeholder="Plate, name, visit number …"
          value={typed}
          onKeyDown={walk}
          onChange={(event) => {
            setTyped(event.target.value);
            setWaiting(false);
            setAt(0);
          }}
        />
        <button type="button" aria-label="Close" onClick={onClose}>
          ×
        </button>
      </div>
      <ProblemNote error={found.error} onRetry={() => void found.refetch()} />
      <FindList id={id} groups={groups} chosen={chosen} onPoint={setAt} onGo={go} />
      <p className={entries.length === 0 ? styles.nothing : 'unseen'} role="status">
        {found.isFetching && entries.length === 0 ? 'Looking …' : sayCount(groups, typed)}
      </p>
      <SlashSwitch />
    </dialog>
  );
}

function sayCount(groups: readonly EntryGroup[], typed: string): string {
  if (groups.length === 0)
    return `Nothing in the book goes by “${typed.trim()}”. Part of a plate or name is enough.`;
  return groups.map(({ title, entries }) => `${title}: ${entries.length}`).join(', ');
}

/** A key that is a mere sign can be in the way of those who speak to their device: it can be switched off. */
function SlashSwitch() {
  const [state, setState] = useRemembered('slash-finds', switchStates, 'on');
  return (
    <footer className={styles.foot}>
      <span>
        <kbd>↑</kbd> <kbd>↓</kbd> choose, <kbd>Enter</kbd> opens, <kbd>Ctrl K</kbd> brings this back
      </span>
      <label>
        <input
          type="checkbox"
          checked={state === 'on'}
          onChange={(event) => setState(event.target.checked ? 'on' : 'off')}
        />
        <kbd>/</kbd> does, too
      </label>
    </footer>
  );
}

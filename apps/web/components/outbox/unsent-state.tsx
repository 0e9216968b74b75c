'use client';

import dynamic from 'next/dynamic';
import { useState } from 'react';
import type { OutboxEntry } from '../../offline/outbox-entry';
import { useUnsent } from '../../offline/use-outbox';
import { useLineWords, type LineWords } from '../shell/use-line-words';
import styles from './outbox.module.css';

const OutboxDialog = dynamic(() => import('./outbox-dialog').then((part) => part.OutboxDialog));

interface Look {
  readonly shape: string;
  readonly word: string;
  readonly isRefused: boolean;
}

interface UnsentStateProps {
  /** On the visit: shown with nothing unsent too, and the state of the line below it, in the same place. */
  readonly always?: boolean;
}

/** How much of what was written down here the server does not have yet; opens the list of it. */
export function UnsentState({ always = false }: UnsentStateProps) {
  const unsent = useUnsent();
  const line = useLineWords();
  const [isOpen, setOpen] = useState(false);
  const { shape, word, isRefused } = lookOf(unsent);
  if (unsent.length === 0 && !always && !isOpen) return null;
  const below = always ? line : null;
  return (
    <>
      <button
        type="button"
        className={`${styles.state} ${isRefused ? styles.mind : ''}`}
        onClick={() => setOpen(true)}
      >
        <span aria-hidden="true">{shape}</span>
        <span className={styles.words}>
          {word}
          {isRefused ? <span className="unseen">some not taken in</span> : null}
          {below === null ? null : <BrokenLine {...below} />}
        </span>
      </button>
      {/* A button hides the roles within it: what has changed is told beside it, in full. */}
      <span role="status" className="unseen">
        {inFull(word, isRefused, below)}
      </span>
      {isOpen ? <OutboxDialog onClose={() => setOpen(false)} /> : null}
    </>
  );
}

function inFull(word: string, isRefused: boolean, line: LineWords | null): string {
  const refused = isRefused ? ', some not taken in' : '';
  return `${word}${refused}${line === null ? '' : `; ${line.what} to the server${line.asOf}`}`;
}

function BrokenLine({ what, asOf }: LineWords) {
  return (
    <span className={styles.line}>
      {what}
      <span className={styles.wide}> to the server</span>
      {asOf}
    </span>
  );
}

function lookOf(unsent: readonly OutboxEntry[]): Look {
  if (unsent.length === 0) return { shape: '✓', word: 'All sent', isRefused: false };
  const isRefused = unsent.some((entry) => entry.state === 'refused');
  return { shape: isRefused ? '▲' : '◐', word: `Not yet sent: ${unsent.length}`, isRefused };
}

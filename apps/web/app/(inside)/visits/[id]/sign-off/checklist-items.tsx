'use client';

import type { PresetEvidence, SignOff } from '@pullbook/contracts';
import { Button } from '../../../../../components/button/button';
import { Mind } from '../../../../../components/marks/marks';
import { evidenceNames } from '../../../../../components/sign-off/evidence-names';
import styles from './sign-off.module.css';

type Item = SignOff['items'][number];

/** Names an item with its words: a tick does not outlive the words that it was given for. */
export const itemId = ({ key, question }: Item) => `${key} ${question}`;

/** An item's words; the book's own beneath where the workshop says them in others. */
export function ItemWords({ item }: Readonly<{ item: Item }>) {
  if (item.builtInQuestion === null) return item.question;
  return (
    <>
      {item.question}
      <span className={styles.ownWords}> (asks for: {item.builtInQuestion})</span>
    </>
  );
}

interface DataItemProps {
  readonly item: Item;
  readonly covered: readonly PresetEvidence[];
}

/** An item that the data answer, for each preset that is covered; nobody ticks it by hand. */
export function DataItem({ item, covered }: DataItemProps) {
  const { evidence } = item;
  if (evidence === null) return null;
  const without = covered.filter((preset) => !preset[evidence]);
  const holds = covered.length > 0 && without.length === 0;
  return (
    <div className={styles.dataItem}>
      <span aria-hidden="true">{holds ? '✓' : '○'}</span>
      <div>
        {item.question}
        <p className="soft small">
          {holds ? 'The data show it' : 'The data do not show it yet'} ({evidenceNames[evidence]})
          {without.length === 0 ? '.' : `: ${without.map(({ name }) => name).join(', ')}.`}
        </p>
      </div>
    </div>
  );
}

/** Said to whoever is about to sign when the workshop's list became another one meanwhile. */
export function ChangedList({ onSeen }: Readonly<{ onSeen: () => void }>) {
  return (
    <Mind title="The checklist changed while you were on it">
      <p>Below is the new one. Ticks stand where an item is the same to the letter; look at the others.</p>
      <Button onClick={onSeen}>I have seen it</Button>
    </Mind>
  );
}

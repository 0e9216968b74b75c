'use client';

import { useEffect } from 'react';
import { Plate } from '../marks/marks';
import type { Entry, EntryGroup } from './entries-of';
import styles from './finder.module.css';

interface FindListProps {
  readonly id: string;
  readonly groups: readonly EntryGroup[];
  /** Which entry, counted through all groups, Enter would open; -1 for none. */
  readonly chosen: number;
  readonly onPoint: (index: number) => void;
  readonly onGo: (index: number) => void;
}

/** The entries by kind, as in the index of a book: the name, dots, where it stands. */
export function FindList({ id, groups, chosen, onPoint, onGo }: FindListProps) {
  useEffect(() => {
    document.getElementById(`${id}-${chosen}`)?.scrollIntoView({ block: 'nearest' });
  }, [id, chosen]);
  const before = groups.map((_, index) =>
    groups.slice(0, index).reduce((sum, group) => sum + group.entries.length, 0),
  );
  return (
    <div id={`${id}-list`} role="listbox" aria-label="Found" className={styles.list}>
      {groups.map((group, index) => (
        <div key={group.title} role="group" aria-labelledby={`${id}-${group.title}`} className={styles.group}>
          <p id={`${id}-${group.title}`} role="presentation">
            {group.title}
          </p>
          <div role="presentation">
            {group.entries.map((entry, place) => (
              <Line
                key={entry.href}
                id={`${id}-${(before[index] ?? 0) + place}`}
                entry={entry}
                isChosen={(before[index] ?? 0) + place === chosen}
                onPoint={() => onPoint((before[index] ?? 0) + place)}
                onGo={() => onGo((before[index] ?? 0) + place)}
              />
            ))}
          </div>
        </div>
      ))}
    </div>
  );
}

interface LineProps {
  readonly id: string;
  readonly entry: Entry;
  readonly isChosen: boolean;
  readonly onPoint: () => void;
  readonly onGo: () => void;
}

function Line({ id, entry, isChosen, onPoint, onGo }: LineProps) {
  return (
    <div
      id={id}
      role="option"
      aria-selected={isChosen}
      className={styles.line}
      onPointerMove={isChosen ? undefined : onPoint}
      onClick={onGo}
    >
      {entry.plate === undefined ? null : <Plate>{entry.plate}</Plate>}
      <span className={styles.name}>{entry.name}</span>
      <span className={styles.dots} aria-hidden="true" />
      <span className={styles.fact}>{entry.fact}</span>
    </div>
  );
}

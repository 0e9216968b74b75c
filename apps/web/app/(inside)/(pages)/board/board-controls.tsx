'use client';

import { useId } from 'react';
import type { CardFilter } from './filter-cards';
import styles from './board.module.css';

interface BoardControlsProps {
  readonly tuners: readonly string[];
  readonly filter: CardFilter;
  readonly onFilter: (filter: CardFilter) => void;
  readonly withCollected: boolean;
  readonly onWithCollected: (show: boolean) => void;
  readonly view: 'lanes' | 'table';
  readonly onView: (view: 'lanes' | 'table') => void;
}

/** Finding, filtering, and choosing lanes or table. */
export function BoardControls(props: BoardControlsProps) {
  const { tuners, filter, onFilter, withCollected, onWithCollected, view, onView } = props;
  const id = useId();
  return (
    <div className={styles.controls} role="search">
      <label className="unseen" htmlFor={`${id}-find`}>
        Show on the board only
      </label>
      <input
        id={`${id}-find`}
        type="search"
        className={styles.find}
        placeholder="Plate, customer or bay"
        value={filter.text}
        onChange={(event) => onFilter({ ...filter, text: event.target.value })}
      />
      <label className="unseen" htmlFor={`${id}-tuner`}>
        Tuner
      </label>
      <select
        id={`${id}-tuner`}
        value={filter.tuner}
        onChange={(event) => onFilter({ ...filter, tuner: event.target.value })}
      >
        <option value="">Every tuner</option>
        {tuners.map((name) => (
          <option key={name}>{name}</option>
        ))}
      </select>
      <button
        type="button"
        aria-pressed={filter.onlyAttention}
        onClick={() => onFilter({ ...filter, onlyAttention: !filter.onlyAttention })}
      >
        Held up only
      </button>
      <button type="button" aria-pressed={withCollected} onClick={() => onWithCollected(!withCollected)}>
        Show collected
      </button>
      <span className="grow" />
      <div className={styles.views} role="group" aria-label="View">
        <button type="button" aria-pressed={view === 'lanes'} onClick={() => onView('lanes')}>
          Lanes
        </button>
        <button type="button" aria-pressed={view === 'table'} onClick={() => onView('table')}>
          Table
        </button>
      </div>
    </div>
  );
}

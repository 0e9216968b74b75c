'use client';

import styles from './board.module.css';

interface LaneMoreProps {
  readonly shownCount: number;
  readonly count: number;
  /** Name of the lane, for those who hear the buttons one by one. */
  readonly place: string;
  readonly onMore: (() => void) | null;
}

/** The end of what was delivered, where there is more; nothing where all is shown. */
export function LaneMore({ shownCount, count, place, onMore }: LaneMoreProps) {
  if (count <= shownCount) return null;
  if (onMore === null) return <p className="soft">{count - shownCount} more: narrow them down above.</p>;
  return (
    <button type="button" className={styles.more} onClick={onMore}>
      Show more <span className="unseen">of {place}</span>
      <span className="soft">({count - shownCount} below)</span>
    </button>
  );
}

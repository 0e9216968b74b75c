'use client';

import type { Log } from '@pullbook/contracts';
import Link from 'next/link';
import { Empty, Mind, Skeleton } from '../../../../components/marks/marks';
import { ProblemNote } from '../../../../components/marks/problem-note';
import type { useWaitingLogs } from '../../../../queries/logs/use-waiting-logs';
import { WaitingRow } from './waiting-row';
import styles from './logs.module.css';

interface WaitingListProps {
  readonly waiting: ReturnType<typeof useWaitingLogs>;
  readonly onAssigned: (log: Log, tuningSessionId: string) => void;
}

/** Every file that belongs to no tuning session yet. */
export function WaitingList({ waiting, onAssigned }: WaitingListProps) {
  const { items, sessions } = waiting.data ?? { items: [], sessions: [] };
  return (
    <section className="sheet stack" aria-labelledby="waiting">
      <h2 id="waiting">Waiting for a tuning session</h2>
      <ProblemNote error={waiting.error} onRetry={() => void waiting.refetch()} />
      {waiting.isPending ? <Skeleton lines={4} label="Loading the files that wait" /> : null}
      {waiting.data !== undefined && items.length === 0 ? (
        <Empty title="No file waits.">
          <p>
            Drop the day’s log files above, of as many cars as you like; then say to which car each belongs.
          </p>
        </Empty>
      ) : null}
      {items.length > 0 && sessions.length === 0 ? (
        <Mind title="No visit has an open tuning session">
          <p>
            Open one on the visit of the car (from the <Link href="/board">board</Link>); then its logs can be
            assigned here. The files stay for a week.
          </p>
        </Mind>
      ) : null}
      <ul className={styles.lines}>
        {items.map((item) => (
          <WaitingRow
            key={item.uploadId}
            item={item}
            sessions={sessions}
            sameName={items.find(({ uploadId }) => uploadId === item.sameAsUploadId)?.fileName ?? null}
            onAssigned={onAssigned}
          />
        ))}
      </ul>
      {items.length === 0 ? null : (
        <p className="soft">
          Nothing is assigned by itself. What nobody assigns is thrown away after a week.
        </p>
      )}
    </section>
  );
}

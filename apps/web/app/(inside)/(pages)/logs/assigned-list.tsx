'use client';

import type { Log, OpenSession } from '@pullbook/contracts';
import Link from 'next/link';
import { Button } from '../../../../components/button/button';
import { countPulls } from '../../../../components/log/count-pulls';
import styles from './logs.module.css';

/** A file that a person has just made a log of a tuning session. */
export interface Assigned {
  readonly log: Log;
  readonly session: OpenSession;
}

interface AssignedListProps {
  readonly assigned: readonly Assigned[];
  readonly onOpen: (one: Assigned) => void;
}

/** What was assigned since the screen was opened, with the way to the pulls found. */
export function AssignedList({ assigned, onOpen }: AssignedListProps) {
  if (assigned.length === 0) return null;
  return (
    <section className="sheet stack" aria-labelledby="assigned">
      <h2 id="assigned">Assigned just now</h2>
      <ul className={styles.lines}>
        {assigned.map((one) => (
          <li key={`${one.log.id} ${one.session.tuningSessionId}`}>
            <p className={styles.told}>
              <b>{one.log.fileName}</b> is a log of {one.session.plate},{' '}
              <Link href={`/visits/${one.session.visitId}`}>visit {one.session.visitNumber}</Link>:{' '}
              {countPulls(one.log.analysis.pulls.length)} found
              {one.log.alreadyOnRecord ? '. It was on record already; nothing was stored twice' : ''}.
            </p>
            <Button onClick={() => onOpen(one)}>Look at the pulls</Button>
          </li>
        ))}
      </ul>
    </section>
  );
}

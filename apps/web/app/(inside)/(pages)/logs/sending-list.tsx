'use client';

import { Button } from '../../../../components/button/button';
import { ProblemNote } from '../../../../components/marks/problem-note';
import type { useSendLogs } from '../../../../queries/logs/use-send-logs';
import styles from './logs.module.css';

/** Files on their way in, each with how far it is. */
export function SendingList({ sending }: Readonly<{ sending: ReturnType<typeof useSendLogs> }>) {
  if (sending.files.length === 0) return null;
  return (
    <section className="sheet stack" aria-labelledby="sending">
      <h2 id="sending">On their way in</h2>
      <ul className={styles.lines}>
        {sending.files.map((one) => (
          <li key={one.number}>
            <span className={styles.name}>
              <b>{one.file.name}</b>
            </span>
            {one.error === null ? (
              <progress
                className={styles.progress}
                max={100}
                value={Math.round(one.share * 100)}
                aria-label={`${one.file.name}, sent`}
              />
            ) : (
              <>
                <ProblemNote
                  error={one.error}
                  title="This file did not come in"
                  onRetry={() => sending.sendAgain(one)}
                />
                <Button onClick={() => sending.forget(one.number)}>Leave it</Button>
              </>
            )}
          </li>
        ))}
      </ul>
    </section>
  );
}

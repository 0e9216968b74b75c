'use client';

import type { PracticeEnding } from '@pullbook/practice-car';
import { useState } from 'react';
import { Button } from '../../../../components/button/button';
import styles from './practice.module.css';

interface EndPartProps {
  /** Duties driven so far, in order. */
  readonly duties: readonly number[];
  readonly onEnd: (ending: PracticeEnding) => void;
}

/** The ways to end it oneself: keep a duty that was driven, or stop and say why. */
export function EndPart({ duties, onEnd }: EndPartProps) {
  const [isStopping, setStopping] = useState(false);
  const driven = [...new Set(duties)].sort((one, other) => one - other);
  const [chosen, setChosen] = useState<number | null>(null);
  const duty = chosen ?? duties.at(-1) ?? null;
  return (
    <section className={`sheet ${styles.end}`} aria-labelledby="practice-end">
      <h2 id="practice-end">Done?</h2>
      {duty === null ? (
        <p className="soft small">Drive a pull first. Then keep a duty, or stop and say why.</p>
      ) : (
        <div className={styles.keep}>
          <label htmlFor="practice-keep">Duty to keep</label>
          <select id="practice-keep" value={duty} onChange={(event) => setChosen(Number(event.target.value))}>
            {driven.map((one) => (
              <option key={one} value={one}>
                {one} %
              </option>
            ))}
          </select>
          <Button onClick={() => onEnd({ kind: 'accept', duty })}>Keep {duty} %</Button>
        </div>
      )}
      {isStopping ? (
        <div className={styles.stops} role="group" aria-label="Why stop?">
          <Button onClick={() => onEnd({ kind: 'stop', because: 'fault' })}>■ Something is wrong</Button>
          <Button onClick={() => onEnd({ kind: 'stop', because: 'out-of-reach' })}>
            ■ It will not make the target
          </Button>
          <Button kind="quiet" onClick={() => setStopping(false)}>
            Go on
          </Button>
        </div>
      ) : (
        <Button disabled={duties.length === 0} onClick={() => setStopping(true)}>
          Stop …
        </Button>
      )}
    </section>
  );
}

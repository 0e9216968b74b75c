import type { Visit } from '@pullbook/contracts';
import { stageNames } from '../stage/stage-names';
import { sayWhen } from '../time/say-when';
import styles from './visit-about.module.css';

/** Where the visit has been, and when. */
export function StageTrail({ visit }: Readonly<{ visit: Visit }>) {
  const now = new Date();
  return (
    <ol className={styles.trail}>
      {visit.stages.map((entry, index) => (
        <li key={index}>
          {stageNames[entry.stage]}{' '}
          <span className="soft">
            {sayWhen(entry.enteredAt, now)}, {entry.by}
          </span>
        </li>
      ))}
    </ol>
  );
}

import type { Visit } from '@pullbook/contracts';
import { sayWhen } from '../time/say-when';
import { StageTrail } from './stage-trail';
import styles from './visit-about.module.css';

/** Wishes, bay, tuner and times of a visit whose car has left: they are no longer changed. */
export function FactsToRead({ visit }: Readonly<{ visit: Visit }>) {
  const now = new Date();
  const when = (instant: string | null) => (instant === null ? 'not said' : sayWhen(instant, now));
  const facts = [
    ['Wishes', visit.wishes === '' ? 'none' : visit.wishes],
    ['Tuner', visit.tunerName ?? 'not known'],
    ['Bay', visit.bay ?? 'not said'],
    ['Booked for', when(visit.bookedFor)],
    ['Promised for', when(visit.promisedAt)],
  ] as const;
  return (
    <section className="sheet stack" aria-labelledby="facts">
      <h2 id="facts">About this visit</h2>
      <dl className={styles.facts}>
        {facts.map(([name, fact]) => (
          <div key={name}>
            <dt>{name}</dt>
            <dd>{fact}</dd>
          </div>
        ))}
      </dl>
      <h3>Where it has been</h3>
      <StageTrail visit={visit} />
    </section>
  );
}

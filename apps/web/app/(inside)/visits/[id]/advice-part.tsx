'use client';

import type { DutyAdvice, NextPull, Prediction } from '@pullbook/contracts';
import { formatNumber } from '@pullbook/tuning-math';
import { Help } from '../../../../components/help/help';
import { useUnits } from '../../../../components/units/use-units';
import styles from './visit.module.css';

interface AdvicePartProps {
  readonly number: number | null;
  readonly next: NextPull;
  readonly advice: DutyAdvice;
}

/** The next duty in very large figures, why, and what to expect of it. */
export function AdvicePart({ number, next, advice }: AdvicePartProps) {
  // The range stands in figures of its own below.
  const [first, ...rest] = advice.reasons.filter(({ code }) => code !== 'expected-range');
  const units = useUnits();
  const step = sayStep(advice, next.highestDutyPct);
  return (
    <section className={`sheet ${styles.next} ${styles.nextRow}`} aria-labelledby="next-title">
      <div>
        <h2 id="next-title" tabIndex={-1} className={styles.nextLabel}>
          {number === null ? 'Next pull' : `Pull ${number}`}
          {advice.action === 'repeat' ? ': repeat with duty' : ': set duty to'}
        </h2>
        <p className={styles.huge} data-testid="next-duty">
          {advice.duty}
          <span className={styles.unit}> %</span>
        </p>
      </div>
      <div className={styles.why}>
        <p className={styles.whyFirst}>
          {step === null ? null : <b>{step}. </b>}
          {first === undefined ? null : units.sayReason(first)}
        </p>
        {rest.map((reason) => (
          <p key={reason.code} className="small">
            {units.sayReason(reason)}
          </p>
        ))}
        {advice.prediction === null ? null : (
          <Expected prediction={advice.prediction} riskLimit={next.riskLimit} />
        )}
      </div>
    </section>
  );
}

interface ExpectedProps {
  readonly prediction: Prediction;
  readonly riskLimit?: number;
}

/** The predicted peak as a range, and the chance of passing the ceiling beside its limit. */
export function Expected({ prediction, riskLimit }: ExpectedProps) {
  const units = useUnits();
  return (
    <dl className={styles.expected}>
      <div>
        <dt>
          <Help word="predicted_range">Expected peak</Help>
        </dt>
        <dd>
          {units.figure(prediction.lowKpa)} to {units.write(prediction.highKpa)}
        </dd>
      </div>
      <div>
        <dt>
          <Help word="chance_of_passing">Chance of passing the ceiling</Help>
        </dt>
        <dd>
          {sayChance(prediction.probabilityOverCeiling)}
          {riskLimit === undefined ? null : <span> (limit {formatNumber(riskLimit * 100, 0)} %)</span>}
        </dd>
      </div>
    </dl>
  );
}

/** A small chance is never said to be none. */
export function sayChance(share: number): string {
  if (share < 0.001) return 'under 0.1 %';
  return share < 0.1 ? `${formatNumber(share * 100, 1)} %` : `${formatNumber(share * 100, 0)} %`;
}

function sayStep(advice: DutyAdvice, highest: number | null): string | null {
  if (advice.duty === null || highest === null || advice.action === 'repeat') return null;
  const step = Math.round((advice.duty - highest) * 100) / 100;
  if (step > 0) return `Up ${step} from ${highest} %`;
  return step < 0 ? `Down ${-step} from ${highest} %` : null;
}

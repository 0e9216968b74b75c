'use client';

import type { GateHoldAdvice, NextGateHold } from '@pullbook/contracts';
import { formatNumber } from '@pullbook/tuning-math';
import { useUnits } from '../../../../components/units/use-units';
import { Expected, sayChance } from './advice-part';
import styles from './visit.module.css';

/** Why, the first reason large. */
export function Reasons({ advice }: Readonly<{ advice: GateHoldAdvice }>) {
  const units = useUnits();
  const [first, ...rest] = advice.reasons;
  return (
    <>
      <p className={styles.whyFirst}>{first === undefined ? null : units.sayReason(first)}</p>
      {rest.map((reason) => (
        <p key={reason.code} className="small">
          {units.sayReason(reason)}
        </p>
      ))}
    </>
  );
}

export interface AnswerProps {
  readonly next: NextGateHold;
  readonly advice: GateHoldAdvice;
}

/** Peak, chance of passing the ceiling, and overshoot beside its limit. */
export function HoldExpected({ next, advice }: AnswerProps) {
  const { prediction } = advice;
  if (prediction === null) return null;
  return (
    <>
      <Expected prediction={prediction} riskLimit={next.riskLimit} />
      <dl className={styles.expected}>
        <div>
          <dt>Expected overshoot</dt>
          <dd>
            {formatNumber(prediction.overshootPct, 1)} %{' '}
            <span>
              (limit {formatNumber(next.overshootLimitPct, 1)} %; chance of being over it{' '}
              {sayChance(prediction.probabilityOverLimit)})
            </span>
          </dd>
        </div>
      </dl>
    </>
  );
}

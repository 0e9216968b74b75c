'use client';

import type { DutyAdvice, GateHoldAdvice } from '@pullbook/contracts';
import { useUnits } from '../../../../components/units/use-units';
import type { SeenPull } from '../../../../offline/pulls-seen';
import { faultOfStop } from './fault-of-stop';
import styles from './visit.module.css';
import { WhatWasFound } from './what-was-found';

interface StopPartProps {
  readonly visitId: string;
  readonly advice: Pick<DutyAdvice | GateHoldAdvice, 'reasons'>;
  readonly pulls: readonly SeenPull[];
  /** Of the heading, and what is added to it. */
  readonly titleId: string;
  readonly what?: string;
  readonly onSound: () => void;
}

/** No further pull: why, and where it may be a fault of the car, the two ways on. */
export function StopPart({ visitId, advice, pulls, titleId, what = '', onSound }: StopPartProps) {
  const units = useUnits();
  const fault = faultOfStop(advice);
  const last = pulls.findLast((pull) => pull.voidedAt === null);
  return (
    <section className={`${styles.next} ${styles.stop}`} aria-labelledby={titleId}>
      <h2 id={titleId} tabIndex={-1}>
        <span aria-hidden="true">■ </span>Stop{what}
      </h2>
      {advice.reasons.map((reason, index) => (
        <p key={reason.code} className={index === 0 ? styles.stopReason : undefined}>
          {units.sayReason(reason)}
        </p>
      ))}
      {fault === null || last === undefined ? (
        <p>Find the cause before the next pull. A wrong reading can be voided in the list below.</p>
      ) : (
        <WhatWasFound visitId={visitId} pull={last} fault={fault} onSound={onSound} />
      )}
    </section>
  );
}

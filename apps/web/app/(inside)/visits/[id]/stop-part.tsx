'use client';

import type { DutyAdvice } from '@pullbook/contracts';
import type { FaultCode } from '@pullbook/tuning-math';
import dynamic from 'next/dynamic';
import { useState } from 'react';
import { Button } from '../../../../components/button/button';
import { useUnits } from '../../../../components/units/use-units';
import type { SeenPull } from '../../../../offline/pulls-seen';
import { faultOfStop } from './fault-of-stop';
import styles from './visit.module.css';

const SoundDialog = dynamic(() => import('./sound-dialog').then((part) => part.SoundDialog));

interface StopPartProps {
  readonly visitId: string;
  readonly advice: DutyAdvice;
  readonly pulls: readonly SeenPull[];
}

/** No further pull: why, and where it may be a fault of the car, the two ways on. */
export function StopPart({ visitId, advice, pulls }: StopPartProps) {
  const units = useUnits();
  const fault = faultOfStop(advice);
  const last = pulls.findLast((pull) => pull.voidedAt === null);
  return (
    <section className={`${styles.next} ${styles.stop}`} aria-labelledby="next-title">
      <h2 id="next-title">
        <span aria-hidden="true">■ </span>Stop
      </h2>
      {advice.reasons.map((reason, index) => (
        <p key={reason.code} className={index === 0 ? styles.stopReason : undefined}>
          {units.sayReason(reason)}
        </p>
      ))}
      {fault === null || last === undefined ? (
        <p>Find the cause before the next pull. A wrong reading can be voided in the list below.</p>
      ) : (
        <WhatWasFound visitId={visitId} pull={last} fault={fault} />
      )}
    </section>
  );
}

interface WhatWasFoundProps {
  readonly visitId: string;
  readonly pull: SeenPull;
  readonly fault: FaultCode;
}

/** The ways on after a look at the car: mended and voided, or nothing wrong. */
function WhatWasFound({ visitId, pull, fault }: WhatWasFoundProps) {
  const [isAsking, setAsking] = useState(false);
  return (
    <>
      <h3>Look the car over. What did you find?</h3>
      <ul className={styles.found}>
        <li>
          <b>A fault:</b> mend it, then void the pulls that it spoiled in the list below. A wrong reading is
          voided there too.
        </li>
        <li>
          <b>Nothing wrong:</b> the pulls stand, and the advice goes on from them.
          <Button aria-haspopup="dialog" onClick={() => setAsking(true)}>
            Nothing wrong found …
          </Button>
        </li>
      </ul>
      {isAsking ? (
        <SoundDialog visitId={visitId} pull={pull} fault={fault} onClose={() => setAsking(false)} />
      ) : null}
    </>
  );
}

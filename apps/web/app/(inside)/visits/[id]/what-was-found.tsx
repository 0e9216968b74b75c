'use client';

import type { FaultCode } from '@pullbook/tuning-math';
import dynamic from 'next/dynamic';
import { useState } from 'react';
import { Button } from '../../../../components/button/button';
import type { SeenPull } from '../../../../offline/pulls-seen';
import styles from './visit.module.css';

const SoundDialog = dynamic(() => import('./sound-dialog').then((part) => part.SoundDialog));

interface WhatWasFoundProps {
  readonly visitId: string;
  readonly pull: SeenPull;
  readonly fault: FaultCode;
  /** Told once the car is said to be sound. */
  readonly onSound: () => void;
}

/** The ways on after a look at the car: mended and voided, or nothing wrong. */
export function WhatWasFound({ visitId, pull, fault, onSound }: WhatWasFoundProps) {
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
        <SoundDialog
          visitId={visitId}
          pull={pull}
          fault={fault}
          onSound={onSound}
          onClose={() => setAsking(false)}
        />
      ) : null}
    </>
  );
}

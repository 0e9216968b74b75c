'use client';

import type { FoundPull, Log } from '@pullbook/contracts';
import { CheckField } from '../field/check-field';
import { useUnits, type PersonsUnits } from '../units/use-units';
import { TraceSpark } from './trace-spark';
import styles from './log.module.css';

interface FoundPullRowProps {
  readonly index: number;
  readonly pull: FoundPull;
  readonly trace: Log['traces'][number] | undefined;
  readonly isTaken: boolean;
  readonly isChosen: boolean;
  readonly onChoose: (isChosen: boolean) => void;
}

/** One pull found in a log: its trace, its figures, and whether it is usable and why not. */
export function FoundPullRow({ index, pull, trace, isTaken, isChosen, onChoose }: FoundPullRowProps) {
  const units = useUnits();
  const name = `Pull at ${pull.startS.toFixed(1)} s`;
  const cannot = isTaken || pull.peakKpa === null;
  return (
    <li className={styles.foundRow}>
      <CheckField
        label={
          <>
            <b>{name}</b>
            <span className="unseen"> take in, number {index + 1}</span>
          </>
        }
        checked={isChosen}
        disabled={cannot}
        onChange={onChoose}
      />
      {trace === undefined ? <span /> : <TraceSpark trace={trace} peakKpa={pull.peakKpa} />}
      <div>
        <p>{figuresOf(pull, units)}</p>
        <p className={pull.usable ? 'soft' : styles.notUsable}>
          {isTaken ? 'taken in already' : pull.usable ? 'usable' : '▲ not usable'}
          {pull.reasons.length === 0
            ? ''
            : `: ${pull.reasons.map((reason) => units.sayReason(reason)).join('; ')}`}
        </p>
      </div>
    </li>
  );
}

function figuresOf(pull: FoundPull, units: PersonsUnits): string {
  return [
    pull.peakKpa === null ? 'no peak' : `peak ${units.peak(pull.peakKpa)} ${units.pressureWord}`,
    pull.gear === null ? null : `gear ${pull.gear}`,
    pull.overshootPct === null ? null : `overshoot ${pull.overshootPct.toFixed(1)} %`,
    pull.onsetRpm === null ? null : `onset ${Math.round(pull.onsetRpm)} r/min`,
    `${(pull.endS - pull.startS).toFixed(1)} s long`,
  ]
    .filter((one) => one !== null)
    .join(' · ');
}

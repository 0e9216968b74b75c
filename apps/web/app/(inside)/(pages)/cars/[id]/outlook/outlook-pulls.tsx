'use client';

import type { OutlookPull, PresetOutlook } from '@pullbook/contracts';
import Link from 'next/link';
import { sayDate } from '../../../../../../components/time/say-when';
import { useUnits, type PersonsUnits } from '../../../../../../components/units/use-units';
import { conditionNames, sayConditions } from './say-conditions';
import styles from './outlook.module.css';

const partNames: Readonly<Record<OutlookPull['part'], string>> = {
  before: 'before',
  baseline: 'baseline',
  since: 'since',
};

/** Every pull that drift and forecast come from, newest first, each leading to its visit. */
export function OutlookPulls({ outlook }: Readonly<{ outlook: PresetOutlook }>) {
  const units = useUnits();
  const { pulls, dutyPct, gateHoldPct } = outlook;
  if (pulls.length === 0) return null;
  const hold = gateHoldPct === null ? '' : ` and ${gateHoldPct} % gate hold`;
  const firedId = outlook.drift?.alarm?.pullId;
  return (
    <section className="sheet stack" aria-labelledby="pulls">
      <h2 id="pulls">
        {pulls.length} {pulls.length === 1 ? 'pull' : 'pulls'} at {dutyPct} % duty{hold}
      </h2>
      <div className="scroll" tabIndex={0} role="region" aria-label="Pulls">
        <table className={styles.pulls}>
          <thead>
            <tr>
              <th scope="col">Visit</th>
              <th scope="col" className="n">
                Pull
              </th>
              <th scope="col">Date</th>
              <th scope="col">Counts as</th>
              <th scope="col" className="n">
                Peak {units.pressureWord}
              </th>
              <th scope="col" className="n">
                At reference {units.pressureWord}
              </th>
              <th scope="col">Conditions</th>
              <th scope="col">Not corrected for</th>
            </tr>
          </thead>
          <tbody>
            {[...pulls].reverse().map((pull) => (
              <PullRow key={pull.pullId} pull={pull} units={units} fired={pull.pullId === firedId} />
            ))}
          </tbody>
        </table>
      </div>
    </section>
  );
}

interface PullRowProps {
  readonly pull: OutlookPull;
  readonly units: PersonsUnits;
  readonly fired: boolean;
}

function PullRow({ pull, units, fired }: PullRowProps) {
  const { visitId, visitNumber, number, referenceKpa, correctionUncertaintyKpa } = pull;
  const spread =
    correctionUncertaintyKpa === null || correctionUncertaintyKpa === 0
      ? ''
      : ` ± ${units.peak(correctionUncertaintyKpa)}`;
  return (
    <tr>
      <td>
        <Link href={`/visits/${visitId}`}>Visit {visitNumber}</Link>
      </td>
      <td className="n">{number}</td>
      <td>{sayDate(pull.recordedAt)}</td>
      <td>
        {partNames[pull.part]}
        {fired ? ', ▲ alarm' : ''}
      </td>
      <td className="n">{units.peak(pull.peakKpa)}</td>
      <td className="n">{referenceKpa === null ? '–' : `${units.peak(referenceKpa)}${spread}`}</td>
      <td>{sayConditions(pull, units) || 'none written down'}</td>
      <td>{pull.notCorrectedFor.map((name) => conditionNames[name]).join(', ') || '–'}</td>
    </tr>
  );
}

'use client';

import type { TracePull } from '@pullbook/contracts';
import Link from 'next/link';
import { pullMark } from '../../../../components/traces/draw-pulls';
import type { TraceView } from '../../../../components/traces/trace-view';
import { useUnits } from '../../../../components/units/use-units';
import styles from './log.module.css';

/** What became of a pull: usable or why not, and where it stands in the book. */
export function PullVerdict({ view, pull }: Readonly<{ view: TraceView; pull: TracePull }>) {
  const units = useUnits();
  const reasons = pull.reasons.map((reason) => units.sayReason(reason)).join('; ');
  const { record } = pull;
  const mark = pullMark(pull);
  const ceiling = record?.ceilingKpa ?? null;
  return (
    <p className={mark === 'usable' ? styles.about : styles.aboutAmiss}>
      <b>Pull {pull.index + 1}</b>, {pull.startS.toFixed(1)} to {pull.endS.toFixed(1)} s
      {pull.gear === null ? '' : `, gear ${pull.gear}`}: {pull.usable ? 'usable' : '▲ not usable'}
      {mark === 'past-ceiling' && ceiling !== null
        ? `, ▲ its peak passed the ceiling of ${units.write(ceiling)}`
        : ''}
      {reasons === '' ? '' : `, ${reasons}`}.{' '}
      {record === null ? (
        'Not taken into the book.'
      ) : (
        <Link href={`/visits/${view.index.visitId}`}>
          In the book: {record.presetName}, pull {record.number}, duty {record.dutyPct} %
        </Link>
      )}
    </p>
  );
}

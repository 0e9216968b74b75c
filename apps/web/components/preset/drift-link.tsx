import type { DriftAlarm } from '@pullbook/contracts';
import { formatNumber } from '@pullbook/tuning-math';
import Link from 'next/link';
import styles from './drift-link.module.css';

interface DriftLinkProps {
  readonly carId: string;
  readonly presetId: string;
  /** Name of the preset, where it does not stand beside. */
  readonly name?: string;
  readonly drift: DriftAlarm | null;
}

const ruleNames: Readonly<Record<DriftAlarm['rule'], string>> = {
  'shewhart-single-pull': 'single pull outside its limits',
  'ewma-moving-average': 'moving average outside its limits',
};

/** A standing drift alarm with the rule that fired, leading to the charts; nothing while none stands. */
export function DriftLink({ carId, presetId, name, drift }: DriftLinkProps) {
  if (drift === null) return null;
  const amount = `${formatNumber(Math.abs(drift.driftPct), 1)} % ${drift.driftPct < 0 ? 'lower' : 'higher'}`;
  return (
    <Link
      href={`/cars/${carId}/outlook?preset=${presetId}`}
      className={styles.alarm}
      title={drift.text}
      draggable={false}
    >
      <span aria-hidden="true">▲ </span>
      <b>{name === undefined ? 'Drift' : `${name}, drift`}</b> {amount}: {ruleNames[drift.rule]}
      {drift.mayBeConditions ? ', may be the weather' : ''}
    </Link>
  );
}

'use client';

import { useUnits } from '../units/use-units';
import styles from './log.module.css';

interface TraceSparkProps {
  /** Rows of one pull; null where the sensor said nothing. */
  readonly trace: { readonly timeS: readonly number[]; readonly boostKpa: readonly (number | null)[] };
  readonly peakKpa: number | null;
}

const width = 220;
const height = 56;
const inset = 4;

/** Boost over the time of one pull, small: enough to see a lift, a spike or a plateau. */
export function TraceSpark({ trace, peakKpa }: TraceSparkProps) {
  const units = useUnits();
  const points = trace.timeS.flatMap((timeS, index) => {
    const boostKpa = trace.boostKpa[index] ?? null;
    return boostKpa === null ? [] : [{ timeS, boostKpa }];
  });
  if (points.length < 2) return <span className="soft small">no trace</span>;
  const times = points.map((one) => one.timeS);
  const boosts = points.map((one) => one.boostKpa);
  const [from, to] = [Math.min(...times), Math.max(...times)];
  const [low, high] = [Math.min(0, ...boosts), Math.max(1, ...boosts)];
  const x = (timeS: number) => inset + ((width - 2 * inset) * (timeS - from)) / Math.max(0.001, to - from);
  const y = (kpa: number) => height - inset - ((height - 2 * inset) * (kpa - low)) / (high - low);
  const path = points.map((one) => `${x(one.timeS).toFixed(1)},${y(one.boostKpa).toFixed(1)}`).join(' ');
  const label = `Boost over ${(to - from).toFixed(1)} s, from ${units.write(boosts[0] ?? low)} up to ${units.write(high)}`;
  return (
    <svg className={styles.spark} viewBox={`0 0 ${width} ${height}`} role="img" aria-label={label}>
      <line x1={inset} x2={width - inset} y1={y(0)} y2={y(0)} className={styles.sparkZero} />
      {peakKpa === null ? null : (
        <line x1={inset} x2={width - inset} y1={y(peakKpa)} y2={y(peakKpa)} className={styles.sparkPeak} />
      )}
      <polyline points={path} className={styles.sparkLine} />
    </svg>
  );
}

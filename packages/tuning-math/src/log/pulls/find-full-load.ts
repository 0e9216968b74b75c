import type { LogSamples } from '../log-samples.js';
import type { PullSettings } from '../pull-settings.js';
import { columnFacts } from '../channels/column-facts.js';

/** A stretch of time under full load. */
export interface LoadStretch {
  readonly startS: number;
  readonly endS: number;
  /** Lowest load inside, % of full; null where load is known from boost alone. */
  readonly lowestPct: number | null;
}

/** How full load was told. */
export interface FullLoad {
  readonly stretches: readonly LoadStretch[];
  readonly basis: 'throttle' | 'pedal' | 'boost';
}

/** A position sensor that never passes this was never at full throttle. */
const LEAST_FULL_PCT = 55;
const LEAST_VARIATION_PCT = 15;
/** Longer than this without a sample, full load is not taken to go on. */
const LONGEST_HOLD_S = 1;
const BOOST_SHARE = 0.5;

/**
 * Stretches of full load: throttle (else pedal) at or above a share of its highest lasting value; else,
 * without either, boost above half of the log's highest.
 *
 * @param samples of a log
 * Cost: O(n). Source: common practice, no source.
 */
export function findFullLoad(samples: LogSamples, settings: PullSettings): FullLoad {
  for (const basis of ['throttle', 'pedal'] as const) {
    const column = samples.columns.get(basis);
    const fullPct = column === undefined ? null : fullPosition(column);
    if (column === undefined || fullPct === null) continue;
    const level = (settings.fullThrottlePct / 100) * fullPct;
    return { basis, stretches: mergeLifts(stretchesAbove(samples.timeS, column, level), settings.liftS) };
  }
  const boost = samples.columns.get('boost-pressure') ?? new Float32Array(0);
  const level = Math.max(settings.leastBoostKpa, BOOST_SHARE * columnFacts(boost).high);
  const above = stretchesAbove(samples.timeS, boost, level);
  return { basis: 'boost', stretches: above.map(({ startS, endS }) => ({ startS, endS, lowestPct: null })) };
}

/** Highest value that three samples in a row reach; null for a sensor that shows no full throttle. */
function fullPosition(column: Float32Array): number | null {
  let [oldest, older] = [NaN, NaN];
  let highest = -Infinity;
  let lowest = Infinity;
  for (let row = 0; row < column.length; row += 1) {
    const value = column[row] as number;
    if (Number.isNaN(value)) continue;
    const lasting = Math.min(oldest, older, value);
    if (lasting > highest) highest = lasting;
    if (value < lowest) lowest = value;
    [oldest, older] = [older, value];
  }
  return highest >= LEAST_FULL_PCT && highest - lowest >= LEAST_VARIATION_PCT ? Math.min(highest, 100) : null;
}

function stretchesAbove(timeS: Float64Array, column: Float32Array, level: number): LoadStretch[] {
  const stretches: LoadStretch[] = [];
  let start = NaN;
  let last = NaN;
  for (let row = 0; row < timeS.length; row += 1) {
    const value = column[row] as number;
    const time = timeS[row] as number;
    const isStale = time - last > LONGEST_HOLD_S;
    if (Number.isNaN(value) && !isStale) continue;
    const isOpen = !Number.isNaN(start);
    if (isOpen && (value < level || isStale)) {
      stretches.push({ startS: start, endS: last, lowestPct: 100 });
      start = NaN;
    }
    if (value >= level) {
      if (Number.isNaN(start)) start = time;
      last = time;
    }
  }
  if (!Number.isNaN(start)) stretches.push({ startS: start, endS: last, lowestPct: 100 });
  return stretches;
}

/** A short lift does not end a pull; it is judged later. Spikes of one sample are not stretches. */
function mergeLifts(stretches: readonly LoadStretch[], liftS: number): LoadStretch[] {
  const merged: LoadStretch[] = [];
  for (const stretch of stretches) {
    const before = merged.at(-1);
    if (before !== undefined && stretch.startS - before.endS <= liftS) {
      merged[merged.length - 1] = { ...before, endS: stretch.endS };
    } else merged.push(stretch);
  }
  return merged.filter((stretch) => stretch.endS > stretch.startS);
}

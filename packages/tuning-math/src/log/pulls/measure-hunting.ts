import { partOf } from '../filter/series.js';
import type { Hunting } from '../log-analysis.js';
import { lineThrough, type SettledBoostMean } from './measure-settled.js';
import type { PullData } from './pull-data.js';

interface Swing {
  readonly timeS: number;
  readonly valueKpa: number;
}

const LEAST_SWINGS = 3;
const NOISE_MULTIPLE = 4;
const LEAST_SWING_KPA = 1;

/**
 * Oscillation of boost after its rise: crests and troughs of the filtered boost about its straight line.
 * Frequency from their spacing; damping ratio from how the distance between neighbours shrinks (the
 * logarithmic decrement over half periods). null where fewer than three swings stand out of the noise.
 *
 * Source: log decrement δ = 2πζ/√(1-ζ²) of a second-order system, for example Ogata, Modern Control Engineering.
 */
export function measureHunting(data: PullData, settled: SettledBoostMean | null): Hunting | null {
  if (settled === null) return null;
  const peakS = data.boost.timeS[indexOfHighest(data.boost.values)] ?? settled.fromS;
  const after = partOf(data.boost, Math.min(peakS, settled.fromS), data.span.endS);
  if (after.values.length < LEAST_SWINGS * 2) return null;
  const line = lineThrough(partOf(data.boost, settled.fromS, data.span.endS));
  const residuals = after.values.map((value, index) => value - line(after.timeS[index] as number));
  const leastKpa = Math.max(LEAST_SWING_KPA, NOISE_MULTIPLE * meanNoise(data));
  const swings = swingsOf(after.timeS, residuals, leastKpa);
  return swings.length < LEAST_SWINGS ? null : describe(swings);
}

function indexOfHighest(values: Float64Array): number {
  return values.reduce((best, value, index) => (value > (values[best] as number) ? index : best), 0);
}

function meanNoise({ lead }: PullData): number {
  return lead.smoothNoiseKpa.reduce((sum, value) => sum + value, 0) / lead.smoothNoiseKpa.length;
}

/** Turning points that stand out of their neighbours by at least `leastKpa` (zigzag with a threshold). */
function swingsOf(timeS: Float64Array, values: Float64Array, leastKpa: number): Swing[] {
  const swings: Swing[] = [];
  let extreme: Swing = { timeS: timeS[0] as number, valueKpa: values[0] as number };
  let direction = 0;
  values.forEach((valueKpa, index) => {
    const here = { timeS: timeS[index] as number, valueKpa };
    const moved = valueKpa - extreme.valueKpa;
    if (moved * direction > 0 || moved === 0) extreme = here;
    else if (direction === 0 && Math.abs(moved) < leastKpa) return;
    else if (Math.abs(moved) >= leastKpa) {
      swings.push(extreme);
      extreme = here;
      direction = Math.sign(moved);
    }
  });
  return swings;
}

function describe(swings: readonly Swing[]): Hunting {
  const first = swings[0] as Swing;
  const last = swings.at(-1) as Swing;
  const periodS = (2 * (last.timeS - first.timeS)) / (swings.length - 1);
  const heights = swings
    .slice(1)
    .map((swing, index) => Math.abs(swing.valueKpa - (swings[index] as Swing).valueKpa));
  const decrement =
    (2 * Math.log((heights[0] as number) / (heights.at(-1) as number))) / (heights.length - 1);
  const dampingRatio = Number.isFinite(decrement)
    ? Math.max(0, decrement / Math.hypot(2 * Math.PI, decrement))
    : null;
  return { frequencyHz: 1 / periodS, dampingRatio, amplitudeKpa: (heights[0] as number) / 2 };
}

import { partOf } from '../filter/series.js';
import type { Hunting } from '../log-analysis.js';
import { fitSwing } from './fit-swing.js';
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
 * Oscillation of boost after its rise. Whether there is one is told by its turning points: at least three swings
 * about the straight line of the settled boost that stand out of the noise. Frequency and damping ratio then come
 * from a fit of a decaying swing to every sample from the first turning point on (`fitSwing`).
 *
 * Source: free response of a second-order system, for example Ogata, Modern Control Engineering, section 5.3.
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
  const [first, second] = swings;
  if (first === undefined || second === undefined || swings.length < LEAST_SWINGS) return null;
  const fitted = fitSwing(partOf(data.boost, first.timeS, data.span.endS));
  if (fitted === null) return null;
  return { ...fitted, amplitudeKpa: Math.abs(second.valueKpa - first.valueKpa) / 2 };
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

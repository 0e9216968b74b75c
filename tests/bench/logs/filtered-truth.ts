import {
  measurePull,
  TRACE_COLUMNS,
  type LoggedPullTruth,
  type PullTruth,
  type Trace,
} from '@pullbook/practice-car';
import { savitzkyGolayWeights } from '@pullbook/tuning-math';

const STEP_S = 0.002;
/** The documented filter: a parabola over 0.25 s. */
const HALF_STEPS = 62;

/**
 * What a pull's figures are by their definition, without noise: the true boost through the documented
 * filter, on a fine even grid by Savitzky-Golay weights, then measured by the practice car's own code. The
 * true boost carries the solenoid's ripple, which the filter is there to take away.
 */
export function filteredTruth(trace: Trace, truth: LoggedPullTruth, targetKpa: number): PullTruth {
  const count = Math.floor((truth.endS - truth.startS) / STEP_S) + 1;
  const leadCount = Math.round(0.5 / STEP_S);
  const timesS = Float64Array.from(
    { length: count + leadCount },
    (_, index) => truth.startS + (index - leadCount) * STEP_S,
  );
  const columns = Object.fromEntries(
    TRACE_COLUMNS.map((name) => [name, timesS.map((timeS) => valueAt(trace.timeS, trace[name], timeS))]),
  ) as Record<(typeof TRACE_COLUMNS)[number], Float64Array>;
  const measured = measurePull({ ...columns, timeS: timesS, boostKpa: smooth(columns.boostKpa) }, targetKpa);
  return measured ?? truth;
}

function valueAt(timeS: Float64Array, values: Float64Array, atS: number): number {
  let [low, high] = [0, timeS.length - 1];
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if ((timeS[middle] ?? 0) <= atS) low = middle;
    else high = middle;
  }
  const [from, to] = [timeS[low] ?? 0, timeS[high] ?? 0];
  const share = to > from ? Math.min(1, Math.max(0, (atS - from) / (to - from))) : 0;
  return (values[low] ?? 0) + share * ((values[high] ?? 0) - (values[low] ?? 0));
}

/** Near an end the window shrinks to what lies on both sides. */
function smooth(values: Float64Array): Float64Array {
  const weightsByHalf = new Map<number, number[]>();
  return values.map((value, index) => {
    const half = Math.min(HALF_STEPS, index, values.length - 1 - index);
    if (half < 1) return value;
    const weights =
      weightsByHalf.get(half) ??
      savitzkyGolayWeights({ windowLength: 2 * half + 1, degree: Math.min(2, 2 * half) });
    weightsByHalf.set(half, weights);
    return weights.reduce((sum, weight, at) => sum + weight * (values[index - half + at] ?? 0), 0);
  });
}

import { partOf, type Series } from '../filter/series.js';
import type { PullData } from './pull-data.js';

/** A hole in the boost of a pull: nothing logged, or the same value again and again. */
export interface BoostHole {
  readonly kind: 'missing' | 'stuck';
  readonly startS: number;
  readonly endS: number;
}

const LEAST_HOLE_S = 0.15;
const HOLE_STEPS = 3.5;
const LEAST_STUCK_SAMPLES = 5;

/**
 * Holes in the boost between the start of the pull and its end: intervals much longer than the usual one,
 * and runs of one value that end in a jump no plateau makes.
 *
 * Source: common practice, no source. Cost: O(n).
 */
export function findHoles(data: PullData): BoostHole[] {
  const raw = partOf(data.lead.raw, data.span.startS, data.span.endS);
  const leastS = Math.max(LEAST_HOLE_S, HOLE_STEPS * data.lead.stepS);
  return [...missing(raw, leastS, data), ...stuck(raw, leastS, data.lead.noiseKpa)];
}

function missing({ timeS }: Series, leastS: number, { span }: PullData): BoostHole[] {
  const edges = [span.startS, ...timeS, span.endS];
  return edges.flatMap((endS, index) => {
    const startS = edges[index - 1] ?? endS;
    return endS - startS > leastS ? [{ kind: 'missing' as const, startS, endS }] : [];
  });
}

function stuck({ timeS, values }: Series, leastS: number, noiseKpa: number): BoostHole[] {
  const holes: BoostHole[] = [];
  let first = 0;
  for (let index = 1; index <= values.length; index += 1) {
    if (index < values.length && values[index] === values[first]) continue;
    const startS = timeS[first] as number;
    const endS = timeS[index - 1] as number;
    const jump = Math.abs((values[index] ?? (values[first] as number)) - (values[first] as number));
    const isRun = endS - startS >= leastS && index - first >= LEAST_STUCK_SAMPLES;
    if (isRun && jump > Math.max(4 * noiseKpa, 3)) holes.push({ kind: 'stuck', startS, endS });
    first = index;
  }
  return holes;
}

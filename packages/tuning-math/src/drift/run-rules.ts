import { requireNumber } from '../require-number.js';
import { requireSeries } from '../require-series.js';

/** Rules of the control chart by name. */
export type RunRule =
  'one-beyond-3-sigma' | 'two-of-three-beyond-2-sigma' | 'four-of-five-beyond-1-sigma' | 'eight-on-one-side';

/** A rule that fired at a value. */
export interface RunAlarm {
  readonly index: number;
  readonly rule: RunRule;
  readonly side: 'high' | 'low';
}

interface RuleFacts {
  readonly rule: RunRule;
  readonly hits: number;
  readonly among: number;
  readonly sigmas: number;
}

const RULES: readonly RuleFacts[] = [
  { rule: 'one-beyond-3-sigma', hits: 1, among: 1, sigmas: 3 },
  { rule: 'two-of-three-beyond-2-sigma', hits: 2, among: 3, sigmas: 2 },
  { rule: 'four-of-five-beyond-1-sigma', hits: 4, among: 5, sigmas: 1 },
  { rule: 'eight-on-one-side', hits: 8, among: 8, sigmas: 0 },
];

/**
 * Which of the four classic run rules fire, and where. All four together raise a false alarm about once in 92
 * values, so they are for looking at a chart, not for waking anyone: see `findDrift`.
 *
 * @param values finite, in order of time; none gives no alarm
 * @param chart centre and standard deviation (above 0) while nothing drifts
 * @throws NotFiniteError, OutOfRangeError
 * Source: Western Electric rules, NIST/SEMATECH e-Handbook of Statistical Methods, 6.3.2.
 */
export function runRules(
  values: ArrayLike<number>,
  chart: { readonly centre: number; readonly sd: number },
): RunAlarm[] {
  requireSeries('runRules', 'values', values, 0);
  requireNumber('runRules', 'centre', chart.centre);
  requireNumber('runRules', 'sd', chart.sd, { min: 0, exclusive: true });
  const scores = Array.from(values, (value) => (value - chart.centre) / chart.sd);
  return scores.flatMap((score, index) => {
    const side = score > 0 ? 'high' : 'low';
    const towards = scores.map((each) => (side === 'high' ? each : -each));
    return RULES.filter((rule) => fires(rule, towards, index)).map(({ rule }) => ({ index, rule, side }));
  });
}

/** A rule fires at a value that is itself beyond its line and completes the number of hits. */
function fires({ hits, among, sigmas }: RuleFacts, towards: readonly number[], index: number): boolean {
  if ((towards[index] ?? 0) <= sigmas) return false;
  const window = towards.slice(Math.max(0, index - among + 1), index + 1);
  return window.filter((score) => score > sigmas).length >= hits;
}

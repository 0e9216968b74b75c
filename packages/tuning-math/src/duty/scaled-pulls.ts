import type { DutyAdviceRequest, DutyPull } from './duty-advice-types.js';
import { heatPath } from './heat-path.js';

/** A peak this small counts as no boost at all: its logarithm would say more than it knows. */
const NO_BOOST_SHARE = 0.02;

/** Pulls in units of the target: scaling every pressure of a request leaves them as they are. */
export interface ScaledPulls {
  readonly count: number;
  readonly duties: Float64Array;
  /** Peak over target. */
  readonly ratios: Float64Array;
  /** Natural logarithm of `ratios`. */
  readonly logs: Float64Array;
  /** Heat soak at each pull; see `heatPath`. */
  readonly heats: Float64Array;
  /** Heat soak at the next pull. */
  readonly nextHeat: number;
  /** Base boost over target; null where unknown. */
  readonly baseRatio: number | null;
}

/** Brings pulls to units of the target. Peaks below 2 % of the target are read as 2 %: no boost was made. */
export function scalePulls(
  pulls: readonly DutyPull[],
  { goal, baseKpa }: Pick<DutyAdviceRequest, 'goal' | 'baseKpa'>,
): ScaledPulls {
  const heats = heatPath(pulls);
  const ratios = Float64Array.from(pulls, (pull) => Math.max(pull.peakKpa / goal.targetKpa, NO_BOOST_SHARE));
  return {
    count: pulls.length,
    duties: Float64Array.from(pulls, (pull) => pull.duty),
    ratios,
    logs: ratios.map((ratio) => Math.log(ratio)),
    heats: Float64Array.from(heats.slice(0, pulls.length)),
    nextHeat: heats[pulls.length] ?? 0,
    baseRatio: baseKpa === null || baseKpa === undefined ? null : baseKpa / goal.targetKpa,
  };
}

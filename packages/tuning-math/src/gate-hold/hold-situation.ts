import type { CheckedRequest } from './check-gate-hold-request.js';
import {
  overshootPosterior,
  probabilityMeanOver,
  probabilityPeakOver,
  type HoldPosterior,
} from './overshoot-posterior.js';

/** All that a decision on the next hold looks at. Holds are settings of the controller's grid, %. */
export interface HoldSituation {
  readonly request: CheckedRequest;
  readonly posterior: HoldPosterior;
  readonly grid: readonly number[];
  readonly highestPulled: number | null;
  /** Highest setting within a step of what was pulled. */
  readonly reach: number;
  /** Highest setting up to which a pull keeps the ceiling risk; null where none does. */
  readonly safe: number | null;
  /** Highest setting that keeps the overshoot limit with the asked confidence; null where none does. */
  readonly sure: number | null;
  /** Highest setting that keeps it as likely as not, and highest that still might (15 %). */
  readonly likely: number | null;
  readonly possible: number | null;
}

/** Shares of doubt at which a setting still counts as possible. */
const STILL_POSSIBLE = 0.85;

/** Reads a checked request into the figures that the decision needs. */
export function readHoldSituation(request: CheckedRequest): HoldSituation {
  const { controller, goal, pulls } = request;
  const posterior = overshootPosterior(pulls, goal.targetKpa);
  const grid = holdGrid(controller.holdMin, controller.holdMax, controller.holdStep);
  const highestPulled = pulls.length === 0 ? null : Math.max(...pulls.map((pull) => pull.holdPct));
  const reachPct = (highestPulled ?? controller.holdMin) + request.stepLimit;
  const overLimit = (hold: number): number => probabilityMeanOver(posterior, hold, goal.overshootLimitPct);
  const overCeiling = (hold: number): number => probabilityPeakOver(posterior, hold, goal.ceilingKpa);
  return {
    request,
    posterior,
    grid,
    highestPulled,
    reach: grid.filter((hold) => hold <= reachPct + 1e-9).at(-1) ?? controller.holdMin,
    safe: highestSetting(grid, overCeiling, request.riskLimit),
    sure: highestSetting(grid, overLimit, 1 - request.confidenceRatio),
    likely: highestSetting(grid, overLimit, 0.5),
    possible: highestSetting(grid, overLimit, STILL_POSSIBLE),
  };
}

/** Highest setting whose chance keeps the limit; chances rise with the setting, so that halving finds it. */
function highestSetting(
  grid: readonly number[],
  chanceAt: (hold: number) => number,
  limit: number,
): number | null {
  let [kept, broken] = [-1, grid.length];
  while (broken - kept > 1) {
    const middle = (kept + broken) >> 1;
    if (chanceAt(grid[middle] ?? NaN) <= limit) kept = middle;
    else broken = middle;
  }
  return grid[kept] ?? null;
}

function holdGrid(min: number, max: number, step: number): number[] {
  const count = Math.floor((max - min) / step + 1e-9);
  return Array.from({ length: count + 1 }, (_, index) => Number((min + index * step).toFixed(6)));
}

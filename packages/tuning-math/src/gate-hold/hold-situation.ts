import type { CheckedRequest } from './check-gate-hold-request.js';
import { holdChances, type HoldChances } from './hold-chances.js';
import { overshootPosterior, type HoldPosterior } from './overshoot-posterior.js';

/** All that a decision on the next hold looks at. Holds are settings of the controller's grid, %. */
export interface HoldSituation {
  readonly request: CheckedRequest;
  readonly posterior: HoldPosterior;
  readonly grid: readonly number[];
  /** Chances of a further pull at a hold; worked out once for each. */
  readonly chancesAt: (holdPct: number) => HoldChances;
  readonly highestPulled: number | null;
  /** Highest setting within a step of what was pulled and below every hold that came near the ceiling. */
  readonly reach: number;
  /** Highest setting that may be pulled: its chance of passing the ceiling is small even over a whole search; null where none is. */
  readonly safe: number | null;
  /** Highest setting that keeps the ceiling with the asked risk in one further pull; null where none does. */
  readonly allowed: number | null;
  /** Where the best hold lies: surely no lower, as likely as not, hardly higher. */
  readonly sure: number;
  readonly likely: number;
  readonly possible: number;
}

/** A search takes several pulls near the ceiling: each may use this share of the asked risk (common practice, no source). */
const SEARCH_SHARE = 0.13;
/** A hold with a pull whose peak came so near the ceiling, as share of it, is not pulled again (common practice, no source). */
const NEAR_CEILING_RATIO = 0.01;
/** Share of the belief that the best hold lies no higher. */
const HARDLY_HIGHER = 0.9;

/** Reads a checked request into the figures that the decision needs. */
export function readHoldSituation(request: CheckedRequest): HoldSituation {
  const { controller, goal, pulls, riskLimit } = request;
  const posterior = overshootPosterior(pulls, goal.targetKpa);
  const grid = holdGrid(controller.holdMin, controller.holdMax, controller.holdStep);
  const highestPulled = pulls.length === 0 ? null : Math.max(...pulls.map((pull) => pull.holdPct));
  const reachPct = Math.min(
    (highestPulled ?? controller.holdMin) + request.stepLimit,
    ...holdsNearCeiling(request).map((hold) => hold - controller.holdStep),
  );
  const chancesAt = remembered((hold) => holdChances(posterior, hold, goal, riskLimit));
  const overCeiling = (hold: number): number => chancesAt(hold).overCeiling;
  const tooHigh = (hold: number): number => chancesAt(hold).tooHigh;
  const highest = (chanceAt: (hold: number) => number, limit: number): number =>
    highestSetting(grid, chanceAt, limit) ?? controller.holdMin;
  return {
    request,
    posterior,
    grid,
    chancesAt,
    highestPulled,
    reach: settingBelow(grid, reachPct),
    safe: highestSetting(grid, overCeiling, SEARCH_SHARE * riskLimit),
    allowed: highestSetting(grid, overCeiling, riskLimit),
    sure: highest(tooHigh, 1 - request.confidenceRatio),
    likely: highest(tooHigh, 0.5),
    possible: highest(tooHigh, HARDLY_HIGHER),
  };
}

function holdsNearCeiling({ pulls, goal }: CheckedRequest): number[] {
  const nearKpa = (1 - NEAR_CEILING_RATIO) * goal.ceilingKpa;
  return pulls.filter((pull) => pull.peakKpa > nearKpa).map((pull) => pull.holdPct);
}

function remembered(figure: (holdPct: number) => HoldChances): (holdPct: number) => HoldChances {
  const known = new Map<number, HoldChances>();
  return (holdPct) => {
    const chances = known.get(holdPct) ?? figure(holdPct);
    known.set(holdPct, chances);
    return chances;
  };
}

/** Highest setting at or below a hold; the lowest one where there is none. */
function settingBelow(grid: readonly number[], holdPct: number): number {
  return grid.filter((hold) => hold <= holdPct + 1e-9).at(-1) ?? grid[0] ?? holdPct;
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

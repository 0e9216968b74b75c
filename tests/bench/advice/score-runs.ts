import { oraclePulls } from './oracle.js';
import { quantile } from './quantile.js';
import type { TuningRun } from './tune-car.js';

/** What is reported of one method on one lot of cars; shares in %. */
export interface Score {
  readonly cars: number;
  readonly healthy: number;
  readonly accepts: number;
  readonly pullsMedian: number;
  readonly pullsP90: number;
  /** Mean pulls above the oracle over healthy cars that were accepted. */
  readonly overOracle: number;
  readonly passedPct: number;
  readonly passedFarPct: number;
  readonly worstExcessPct: number;
  readonly wrongPct: number;
  readonly wrongFarPct: number;
  /** Healthy cars that were not accepted though a setting made the target, as hot as the car was at the end. */
  readonly stoppedPct: number;
  /** Healthy cars that were looked over for a fault at least once. */
  readonly lookedOverPct: number;
  readonly unreachable: number;
  readonly unreachableStoppedPct: number;
  /** Mean pulls beyond those that the step rule needs to reach the end of the range. */
  readonly unreachableWaste: number;
  readonly soaring: number;
  readonly soaringStoppedPct: number;
  readonly soaringPulls: number;
  readonly falling: number;
  readonly fallingStoppedPct: number;
  readonly fallingPulls: number;
  readonly violations: number;
  readonly decisionMsP50: number;
  readonly decisionMsP95: number;
  /** Decisions with at least `MANY_PULLS` on record. */
  readonly manyPulls: number;
  readonly manyPullsMsP95: number;
}

/** A pull past the ceiling by more than this is far past it. */
const FAR_PASS = 1.05;

/** A decision with so many pulls on record takes longest. */
const MANY_PULLS = 20;

/** Scores runs of one method; see `Score`. */
export function scoreRuns(runs: readonly TuningRun[]): Score {
  const healthy = runs.filter(({ car }) => car.shape.kind === 'healthy');
  const accepted = healthy.filter(({ end }) => end === 'accept');
  const everyAccept = runs.filter((run) => run.end === 'accept' && !faultShown(run));
  const excesses = runs.map(worstExcess);
  const counts = accepted.map(({ pulls }) => pulls.length);
  return {
    cars: runs.length,
    healthy: healthy.length,
    accepts: accepted.length,
    pullsMedian: quantile(counts, 0.5),
    pullsP90: quantile(counts, 0.9),
    overOracle: mean(accepted.map((run) => run.pulls.length - oraclePulls(run.car, run.pulls[0]?.duty ?? 0))),
    passedPct: percent(excesses, (excess) => excess > 1),
    passedFarPct: percent(excesses, (excess) => excess > FAR_PASS),
    worstExcessPct: 100 * (Math.max(1, ...excesses) - 1),
    wrongPct: percent(everyAccept, (run) => offTolerance(run) > 1),
    wrongFarPct: percent(everyAccept, (run) => offTolerance(run) > 1.5),
    stoppedPct: percent(healthy, ({ end, isReachable }) => end !== 'accept' && isReachable),
    lookedOverPct: percent(healthy, ({ looksInVain }) => looksInVain > 0),
    ...scoreUnreachable(runs),
    ...scoreFaults(runs),
    violations: runs.reduce((sum, run) => sum + run.violations, 0),
    ...scoreTime(runs),
  };
}

function scoreUnreachable(runs: readonly TuningRun[]) {
  const lot = runs.filter(({ car }) => ['out-of-reach', 'floor-over-target'].includes(car.shape.kind));
  const short = lot.filter(({ car }) => car.shape.kind === 'out-of-reach');
  return {
    unreachable: lot.length,
    unreachableStoppedPct: percent(lot, ({ end }) => end === 'stop'),
    unreachableWaste: mean(
      short.map(({ car, pulls }) => {
        const first = pulls[0]?.duty ?? 0;
        return pulls.length - Math.ceil((car.controller.dutyMax - first) / 10) - 1;
      }),
    ),
  };
}

function scoreFaults(runs: readonly TuningRun[]) {
  const shown = runs.filter(faultShown);
  const soaring = shown.filter(({ car }) => car.shape.kind === 'soaring-fault');
  const falling = shown.filter(({ car }) => car.shape.kind === 'falling-fault');
  return {
    soaring: soaring.length,
    soaringStoppedPct: percent(soaring, ({ end }) => end === 'stop'),
    soaringPulls: mean(soaring.map(pullsSinceFault)),
    falling: falling.length,
    fallingStoppedPct: percent(falling, ({ end }) => end === 'stop'),
    fallingPulls: mean(falling.map(pullsSinceFault)),
  };
}

function scoreTime(runs: readonly TuningRun[]) {
  const times = runs.flatMap(({ decisionsMs }) => decisionsMs);
  const many = runs.flatMap(({ decisionsMs }) => decisionsMs.slice(MANY_PULLS));
  return {
    decisionMsP50: quantile(times, 0.5),
    decisionMsP95: quantile(times, 0.95),
    manyPulls: many.length,
    manyPullsMsP95: quantile(many, 0.95),
  };
}

/** Whether a fault moved any pull of the run. */
export function faultShown({ pulls }: TuningRun): boolean {
  return pulls.some(({ showsFault }) => showsFault);
}

/** Pulls made from the one that first showed the fault on, that one included. */
function pullsSinceFault({ pulls }: TuningRun): number {
  return pulls.length - pulls.findIndex(({ showsFault }) => showsFault);
}

/** Highest avoidable peak of a run over the ceiling, as a ratio. */
export function worstExcess({ car, pulls }: TuningRun): number {
  const firstFault = pulls.findIndex(({ showsFault }) => showsFault);
  const floorOver = car.truth.meanKpa(car.controller.dutyMin) > car.goal.targetKpa;
  let worst = 0;
  pulls.forEach(({ duty, peakKpa }, index) => {
    if (duty <= car.controller.dutyMin || (index === 0 && floorOver)) return;
    if (index === firstFault && car.shape.kind === 'soaring-fault') return;
    worst = Math.max(worst, peakKpa / car.goal.ceilingKpa);
  });
  return worst;
}

/** Distance of the accepted mean from the target, in tolerances. */
export function offTolerance({ car, acceptedMeanKpa }: TuningRun): number {
  return Math.abs((acceptedMeanKpa ?? 0) - car.goal.targetKpa) / car.goal.toleranceKpa;
}

function percent<T>(items: readonly T[], holds: (item: T) => boolean): number {
  return items.length === 0 ? 0 : (100 * items.filter(holds).length) / items.length;
}

function mean(values: readonly number[]): number {
  return values.length === 0 ? 0 : values.reduce((sum, value) => sum + value, 0) / values.length;
}

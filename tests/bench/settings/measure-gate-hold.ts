import { adviseGateHold, type HoldPull } from '@pullbook/tuning-math';
import { drawHoldCar, START_HOLD_PCT, type HoldCar } from './hold-car.js';
import { quantileOf } from './sorted-quantile.js';

/** How the search went on one car. */
export interface HoldRow {
  /** Best minus found hold, points; null where none was found. */
  readonly missPoints: number | null;
  /** Pulls made for the hold; those that found the duty do not count. */
  readonly pulls: number;
  readonly isPastCeiling: boolean;
  /** How it ended if no hold was found. */
  readonly end: string;
  readonly decisions: number;
  readonly decisionMs: number;
}

const MOST_PULLS = 20;
const RISK_LIMIT = 0.02;
/** Pulls at the found duty, as a workshop makes them before it goes on to the hold. */
const START_PULLS = 3;
/** Distance, in standard deviations, that leaves RISK_LIMIT above it. */
const RISK_SIGMAS = 2.054;
const TRUTH_STEP_PCT = 5;

/** Runs the search on the car of a seed and compares it with the best hold that the car's truth allows. */
export function measureGateHold(seed: number): HoldRow {
  const car = drawHoldCar(seed);
  const controller = { holdMin: 0, holdMax: 100, holdStep: 1 };
  const pulls: HoldPull[] = [];
  let isPastCeiling = false;
  let [decisions, decisionMs] = [0, 0];
  const pullAt = (holdPct: number): void => {
    const { reading, truePeakKpa } = car.pull(pulls.length, holdPct);
    pulls.push(reading);
    isPastCeiling ||= truePeakKpa > car.goal.ceilingKpa;
  };
  for (let made = 0; made < START_PULLS; made += 1) pullAt(START_HOLD_PCT);
  let end = 'too many pulls';
  let foundPct: number | null = null;
  while (pulls.length < START_PULLS + MOST_PULLS) {
    const before = process.cpuUsage();
    const advice = adviseGateHold({ controller, goal: car.goal, riskLimit: RISK_LIMIT, pulls });
    decisionMs += process.cpuUsage(before).user / 1000;
    decisions += 1;
    if (advice.provedBy.length > 0) foundPct = advice.holdPct;
    if (advice.provedBy.length > 0 || advice.holdPct === null) {
      end = `${advice.action}: ${advice.reasons[0]?.code ?? ''}`;
      break;
    }
    pullAt(advice.holdPct);
  }
  const missPoints = foundPct === null ? null : bestHold(car) - foundPct;
  return { missPoints, pulls: pulls.length - START_PULLS, isPastCeiling, end, decisions, decisionMs };
}

/** Highest whole hold whose true mean overshoot keeps the limit and whose true chance of passing the ceiling the risk. */
function bestHold(car: HoldCar): number {
  const excess = new Map<number, number>();
  const excessAt = (node: number): number => {
    const value = excess.get(node) ?? excessOf(car, START_HOLD_PCT + node * TRUTH_STEP_PCT);
    excess.set(node, value);
    return value;
  };
  let [kept, broken] = [0, (100 - START_HOLD_PCT) / TRUTH_STEP_PCT];
  if (excessAt(broken) <= 0) return 100;
  while (broken - kept > 1) {
    const middle = (kept + broken) >> 1;
    if (excessAt(middle) <= 0) kept = middle;
    else broken = middle;
  }
  const [below, above] = [Math.min(0, excessAt(kept)), excessAt(broken)];
  const share = below / (below - above);
  return Math.floor(START_HOLD_PCT + TRUTH_STEP_PCT * (kept + share));
}

/** By how much a hold breaks the tighter of its two limits, in points of settled boost; 0 or less if it keeps them. */
function excessOf(car: HoldCar, holdPct: number): number {
  const truth = car.truth(holdPct);
  const overshootPct = mean(truth.map((pull) => pull.overshootPct ?? 0));
  const peaks = truth.map((pull) => pull.peakKpa);
  const settledKpa = mean(truth.map((pull) => pull.settledKpa));
  const peakKpa = mean(peaks);
  const sdKpa = Math.sqrt(peaks.reduce((sum, peak) => sum + (peak - peakKpa) ** 2, 0) / (peaks.length - 1));
  const overCeiling = (100 * (peakKpa + RISK_SIGMAS * sdKpa - car.goal.ceilingKpa)) / settledKpa;
  return Math.max(overshootPct - car.goal.overshootLimitPct, overCeiling);
}

const mean = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value, 0) / values.length;

/** The rows of all cars as figures. */
export function scoreGateHold(rows: readonly HoldRow[]): {
  readonly found: number;
  readonly withinThree: number;
  readonly tooHigh: number;
  readonly medianMiss: number;
  readonly medianPulls: number;
  readonly p90Pulls: number;
  readonly pastCeiling: number;
  readonly msPerDecision: number;
  readonly ends: ReadonlyMap<string, number>;
} {
  const misses = rows.flatMap((row) => row.missPoints ?? []);
  const found = rows.filter((row) => row.missPoints !== null);
  const ends = new Map<string, number>();
  for (const { end } of rows) ends.set(end, (ends.get(end) ?? 0) + 1);
  const sum = (figure: (row: HoldRow) => number): number =>
    rows.reduce((total, row) => total + figure(row), 0);
  return {
    found: found.length,
    withinThree: misses.filter((miss) => Math.abs(miss) <= 3).length,
    tooHigh: misses.filter((miss) => miss < -3).length,
    medianMiss: quantileOf(misses, 0.5),
    medianPulls: quantileOf(
      found.map((row) => row.pulls),
      0.5,
    ),
    p90Pulls: quantileOf(
      found.map((row) => row.pulls),
      0.9,
    ),
    pastCeiling: rows.filter((row) => row.isPastCeiling).length,
    msPerDecision: sum((row) => row.decisionMs) / sum((row) => row.decisions),
    ends,
  };
}

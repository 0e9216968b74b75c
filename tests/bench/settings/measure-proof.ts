import { driveShapeCar, seededRandom, type ShapeCar } from '@pullbook/practice-car';
import { normalCdf, provePreset, type PooledSpread, type ProofPull } from '@pullbook/tuning-math';
import { drawHealthyCar, goodDuty } from './healthy-cars.js';
import { quantileOf } from './sorted-quantile.js';

/** How the proof of one car went. */
export interface ProofRow {
  /** Pulls until it was called proven; null where twelve did not do. */
  readonly pulls: number | null;
  /** Called proven though its true share of pulls inside the tolerance is under what was promised. */
  readonly isWrong: boolean;
}

const MOST_PULLS = 12;
const COVERAGE = 0.9;
/** Share of spoilt pulls that the verdict on the log takes out. */
const SPOILT_FOUND = 0.9;

/** Pulls a car at its duty until the preset is proven, looking after every pull, at most twelve. */
export function measureProof(seed: number, pooledRatio: number | null): ProofRow {
  const car = drawHealthyCar(seed);
  const pulls = pullUntilProven(car, pooledRatio);
  return { pulls, isWrong: pulls !== null && trueShareInside(car) < COVERAGE };
}

/** The rows of all cars as figures. */
export function scoreProof(rows: readonly ProofRow[]): {
  readonly cars: number;
  readonly proven: number;
  readonly wrong: number;
  readonly medianPulls: number;
} {
  const counts = rows.flatMap((row) => row.pulls ?? []);
  const wrong = rows.filter((row) => row.isWrong).length;
  return { cars: rows.length, proven: counts.length, wrong, medianPulls: quantileOf(counts, 0.5) };
}

function pullUntilProven(car: ShapeCar, pooledRatio: number | null): number | null {
  const drive = driveShapeCar(car);
  const duty = goodDuty(car);
  const random = seededRandom(car.seed + 77);
  const pooled: PooledSpread | undefined =
    pooledRatio === null ? undefined : { sd: pooledRatio * car.goal.targetKpa, degreesOfFreedom: 40 };
  const pulls: ProofPull[] = [];
  for (let made = 0; made < MOST_PULLS; made += 1) {
    const pull = drive.pull(duty);
    const isUsable = !pull.isFalse || random() > SPOILT_FOUND;
    pulls.push({ peakKpa: pull.peakKpa, isUsable, isHeatSoaked: made >= car.truth.soakPulls });
    const request = { goal: car.goal, pulls, rule: { coverageRatio: COVERAGE, confidenceRatio: 0.95 } };
    const proof = provePreset(pooled === undefined ? request : { ...request, pooled });
    if (proof.isProven) return made + 1;
  }
  return null;
}

/** Share of sound pulls inside tolerance and ceiling, evenly over cold to soaked. */
function trueShareInside(car: ShapeCar): number {
  const { goal, truth } = car;
  const coldKpa = truth.meanKpa(goodDuty(car));
  const steps = 20;
  let share = 0;
  for (let step = 0; step < steps; step += 1) {
    const meanKpa = coldKpa * (1 + (truth.soakShiftRatio * (step + 0.5)) / steps);
    const sdKpa = truth.scatterRatio * meanKpa;
    const roofKpa = Math.min(goal.targetKpa + goal.toleranceKpa, goal.ceilingKpa);
    const below = normalCdf((goal.targetKpa - goal.toleranceKpa - meanKpa) / sdKpa);
    share += (normalCdf((roofKpa - meanKpa) / sdKpa) - below) / steps;
  }
  return share;
}

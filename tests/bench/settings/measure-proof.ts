import { driveShapeCar, seededRandom, type ShapeCar } from '@pullbook/practice-car';
import { normalCdf, provePreset, type PooledSpread, type ProofPull } from '@pullbook/tuning-math';
import { drawHealthyCar, goodDuty } from './healthy-cars.js';
import { quantileOf } from './sorted-quantile.js';

/** How often 'proven' was said, and how often wrongly. */
export interface ProofScore {
  readonly cars: number;
  readonly proven: number;
  /** Cars called proven whose true share of pulls inside the tolerance is under what was promised. */
  readonly wrong: number;
  readonly medianPulls: number;
}

const MOST_PULLS = 12;
const COVERAGE = 0.9;
/** Share of spoilt pulls that the verdict on the log takes out. */
const SPOILT_FOUND = 0.9;

/** Pulls each car at its duty until the preset is proven, looking after every pull, at most twelve. */
export function measureProof(count: number, pooledRatio: number | null): ProofScore {
  let [proven, wrong] = [0, 0];
  const pullCounts: number[] = [];
  for (let seed = 1; seed <= count; seed += 1) {
    const car = drawHealthyCar(seed);
    const pulls = pullUntilProven(car, pooledRatio);
    if (pulls === null) continue;
    proven += 1;
    pullCounts.push(pulls);
    if (trueShareInside(car) < COVERAGE) wrong += 1;
  }
  return { cars: count, proven, wrong, medianPulls: quantileOf(pullCounts, 0.5) };
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

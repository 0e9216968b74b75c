import type { BoostGoal, DutyController } from '@pullbook/tuning-math';
import { drawCar } from '../physical/draw-car.js';
import type { PhysicalCar } from '../physical/physical-car.js';
import { runPull } from '../physical/run-pull.js';
import { drawBetween } from '../random/draw-between.js';
import { seededRandom, type Random } from '../random/seeded-random.js';
import { drawPracticeFault, type PracticeFault } from './draw-practice-fault.js';
import { drivePhysical, type PhysicalRun } from './drive-physical.js';
import { overBoostCutOf } from './over-boost-cut.js';
import type { PracticeCar, PracticeLevel, PracticeOrder } from './practice-car.js';

const CONTROLLER: DutyController = { dutyMin: 0, dutyMax: 100, dutyStep: 1 };
/** Targets that the trade asks for: this many times the peak with the solenoid idle. */
const LEAST_GAIN = 1.2;
const MOST_GAIN = 3;
const MOST_TARGET_KPA = 240;
const MOST_DRAWS = 60;
/** Shares of the doubtful cars: what fails on the way, and what no duty suits; the rest is sound. */
const FAILING_SHARE = 0.45;
const SHORT_SHARE = 0.2;

interface Fitting {
  readonly car: PhysicalCar;
  readonly floorKpa: number;
  /** About the duty that makes the target, %. */
  readonly goodDuty: number;
  readonly targetKpa: number;
}

/** A practice car of springs, gases and a solenoid, with a log of every pull. */
export function physicalPracticeCar(order: PracticeOrder, seed: number): PracticeCar {
  const { level } = order;
  const random = seededRandom(seed);
  const lot = random();
  const isShort = level === 'doubtful' && lot < SHORT_SHARE;
  const fails = level === 'doubtful' && !isShort && lot < SHORT_SHARE + FAILING_SHARE;
  const run = weatherOf(random, level, seed);
  const fitting = drawFitting(random, run, isShort);
  const failing: PracticeFault | null = fails ? drawPracticeFault(random, fitting.goodDuty) : null;
  const goal = goalOf(random, fitting.targetKpa);
  const litres = (fitting.car.engine.displacementM3 * 1000).toFixed(1);
  return {
    sheet: {
      ...order,
      engine: `${litres} l, turbocharged`,
      hasLog: true,
      controller: CONTROLLER,
      goal,
      baseKpa: random() < 0.7 ? Math.round(fitting.floorKpa) : null,
      overBoostCutKpa: overBoostCutOf(goal),
    },
    ...drivePhysical(fitting.car, { ...run, failing }),
    fault: failing && { name: failing.fault.kind, fromPull: failing.fromIndex + 1 },
  };
}

function weatherOf(random: Random, level: PracticeLevel, seed: number): PhysicalRun {
  const isCalm = level === 'calm';
  return {
    seed,
    ambient: {
      pressureAbsKpa: isCalm ? 101 : drawBetween(random, 93, 103),
      temperatureC: isCalm ? 18 : drawBetween(random, 2, 34),
    },
    soakC: isCalm ? 6 : drawBetween(random, 15, 45),
    shortShare: isCalm ? 0 : 0.06,
    failing: null,
  };
}

function drawFitting(random: Random, { ambient }: PhysicalRun, isShort: boolean): Fitting {
  for (let draw = 0; draw < MOST_DRAWS; draw += 1) {
    const car = drawCar(random);
    const peakKpa = (dutyPct: number): number => runPull(car, { dutyPct, ambient }).peakKpa;
    const floorKpa = peakKpa(0);
    const goodDuty = isShort ? 100 : Math.round(drawBetween(random, 32, 82));
    const over = isShort ? drawBetween(random, 1.08, 1.3) : 1;
    const targetKpa = Math.round(peakKpa(goodDuty) * over);
    const gain = targetKpa / floorKpa;
    if (gain >= LEAST_GAIN && gain <= MOST_GAIN && targetKpa <= MOST_TARGET_KPA)
      return { car, floorKpa, goodDuty, targetKpa };
  }
  throw new Error(`no fitting practice car in ${MOST_DRAWS} draws`);
}

function goalOf(random: Random, targetKpa: number): BoostGoal {
  return {
    targetKpa,
    toleranceKpa: Math.ceil(targetKpa * drawBetween(random, 0.02, 0.03)),
    ceilingKpa: Math.round(targetKpa * drawBetween(random, 1.07, 1.12)),
  };
}

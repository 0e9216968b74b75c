import { drawOne } from '../random/draw-one.js';
import { seededRandom } from '../random/seeded-random.js';
import { drawShapeCar } from '../shapes/draw-shape-car.js';
import { driveShapeCar } from '../shapes/drive-shape-car.js';
import type { ShapeCar } from '../shapes/shape-car.js';
import { DEVELOPMENT_SHAPES } from '../shapes/shape-catalogue.js';
import { soakAfter } from '../shapes/soak-after.js';
import { hasGoodDuty } from './good-duty.js';
import { overBoostCutOf } from './over-boost-cut.js';
import { tidyGoal } from './tidy-goal.js';
import type { PracticeCar, PracticeOrder, PracticePull } from './practice-car.js';

/** Steeper than the shapes were made with; the rest as usual. */
const CONDITIONS = { scatter: 1, soak: 1, falsePulls: 1.5, steepness: 1.35 };
const MOST_DRAWS = 200;

/** A sound car of one of the development shapes, drawn steep: there is no log, the gauge is all. */
export function shapePracticeCar(order: PracticeOrder, seed: number): PracticeCar {
  const shapeCar = drawFitting(seed);
  const { controller, baseKpa, truth } = shapeCar;
  const goal = tidyGoal(shapeCar.goal);
  return {
    sheet: {
      ...order,
      engine: 'engine and turbo not on record',
      hasLog: false,
      controller,
      goal,
      baseKpa: baseKpa === null ? null : Math.round(baseKpa),
      overBoostCutKpa: overBoostCutOf(goal),
    },
    pullAfter: (duties) => pullShape(shapeCar, duties),
    soundMeanKpa: (duty, pullsMade) => truth.meanKpa(duty) * soakAfter(truth, pullsMade - 1),
    fault: null,
  };
}

function drawFitting(seed: number): ShapeCar {
  const sound = DEVELOPMENT_SHAPES.filter(({ shape }) => shape.kind === 'healthy');
  const random = seededRandom(seed);
  for (let draw = 0; draw < MOST_DRAWS; draw += 1) {
    const entry = drawOne(random, sound);
    const car = drawShapeCar({ ...entry, seed: seed * MOST_DRAWS + draw, conditions: CONDITIONS });
    if (hasGoodDuty(car.truth.meanKpa, car.controller, tidyGoal(car.goal))) return car;
  }
  throw new Error(`no steep practice car in ${MOST_DRAWS} draws from seed ${seed}`);
}

function pullShape(car: ShapeCar, duties: readonly number[]): PracticePull {
  const drive = driveShapeCar(car);
  const last = duties.map((duty) => drive.pull(duty)).at(-1);
  if (last === undefined) throw new Error('pullShape: no duty to drive');
  return {
    duty: last.duty,
    recordedPeakKpa: Math.round(last.peakKpa),
    trueMeanKpa: last.trueMeanKpa,
    isFalse: last.isFalse,
    isSeenShort: false,
    showsFault: last.showsFault,
    trace: null,
  };
}

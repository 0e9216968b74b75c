import type { ShapeCar, ShapeConditions } from '@pullbook/practice-car';
import { CAR_SETS, type CarSet } from './car-sets.js';
import { drawCars } from './draw-cars.js';
import { KNOWING, knowingMethod } from './knowing-method.js';
import { METHODS } from './methods.js';
import { earlierCarsOf, type EarlierOrder } from './siblings.js';
import { tuneCar, type CarlessRun, type Method } from './tune-car.js';

/** A lot of cars and the method to tune them by, in a form that can be sent to another thread. */
export interface Lot {
  readonly set: CarSet;
  readonly count: number;
  readonly seed: number;
  readonly conditions?: ShapeConditions;
  readonly method: string;
  readonly foretell?: boolean;
  /** Cars of the build that are on record; left out: none. */
  readonly earlier?: EarlierOrder;
}

/** The cars of a lot, the same each time. */
export function carsOf({ set, count, seed, conditions }: Lot): ShapeCar[] {
  return drawCars(CAR_SETS[set], { count, seed, ...(conditions ? { conditions } : {}) });
}

/** Tunes one car of a lot by the method of the lot. */
export function runOne(lot: Lot, car: ShapeCar): CarlessRun {
  const { foretell = false, earlier } = lot;
  const earlierCars = earlier ? earlierCarsOf(buildOf(car, earlier), earlier, tuneByHand) : [];
  return tuneCar(car, methodFor(lot, car), { foretell, earlierCars });
}

function methodFor({ method }: Lot, car: ShapeCar): Method {
  return method === KNOWING ? knowingMethod(car) : methodNamed(method);
}

/** How the earlier cars were tuned. */
function tuneByHand(car: ShapeCar): CarlessRun {
  return tuneCar(car, methodNamed('ladder of 10, then interpolation'));
}

/** The car whose siblings are on record: itself, or one of another shape with its goal scaled to this one's. */
function buildOf(car: ShapeCar, { whose }: EarlierOrder): ShapeCar {
  if (whose === 'own') return car;
  const [other = car] = carsOf({ set: 'development', count: 1, seed: car.seed, method: '' }).slice(
    car.seed % 15,
  );
  const scale = car.goal.targetKpa / other.goal.targetKpa;
  const meanKpa = (duty: number): number => scale * other.truth.meanKpa(duty);
  return { ...car, truth: { ...car.truth, meanKpa } };
}

function methodNamed(name: string): Method {
  const method = METHODS.get(name);
  if (!method) throw new Error(`no method is named ${name}`);
  return method;
}

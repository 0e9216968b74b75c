import type { ShapeCar, ShapeConditions } from '@pullbook/practice-car';
import { CAR_SETS, type CarSet } from './car-sets.js';
import { drawCars } from './draw-cars.js';
import { METHODS } from './methods.js';
import { tuneCar, type CarlessRun } from './tune-car.js';

/** A lot of cars and the method to tune them by, in a form that can be sent to another thread. */
export interface Lot {
  readonly set: CarSet;
  readonly count: number;
  readonly seed: number;
  readonly conditions?: ShapeConditions;
  readonly method: string;
  readonly foretell?: boolean;
}

/** The cars of a lot, the same each time. */
export function carsOf({ set, count, seed, conditions }: Lot): ShapeCar[] {
  return drawCars(CAR_SETS[set], { count, seed, ...(conditions ? { conditions } : {}) });
}

/** Tunes one car by the method of its lot. */
export function runOne({ method, foretell = false }: Lot, car: ShapeCar): CarlessRun {
  const known = METHODS.get(method);
  if (!known) throw new Error(`no method is named ${method}`);
  return tuneCar(car, known, { foretell });
}

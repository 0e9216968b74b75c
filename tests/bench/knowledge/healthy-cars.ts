import type { ShapeCar } from '@pullbook/practice-car';
import { CAR_SETS, type CarSet } from '../advice/car-sets.js';
import { drawCars } from '../advice/draw-cars.js';

/** Which cars to draw: `count` of the whole set, of which those that can be tuned are taken. */
export interface HealthyOrder {
  readonly set: CarSet;
  readonly count: number;
  readonly seed: number;
}

/** Cars without a fault whose target is within reach: nothing else is known to a believer. */
export function healthyCars({ set, count, seed }: HealthyOrder): ShapeCar[] {
  return drawCars(CAR_SETS[set], { count, seed }).filter(({ shape }) => shape.kind === 'healthy');
}

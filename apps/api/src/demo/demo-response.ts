import type { SettingRange } from '@pullbook/contracts';
import {
  DEVELOPMENT_SHAPES,
  drawShapeCar,
  driveShapeCar,
  type ShapeCar,
  type ShapeDrive,
} from '@pullbook/practice-car';

/** How a car of the scenario answers to duty. */
export interface DemoResponse {
  /** Peak with the solenoid idle, kPa gauge, to the whole kilopascal. */
  readonly baseKpa: number;
  /** A fresh tuning session with the car; `looseFrom`: pull from which its control line is off. */
  readonly drive: (visit: number, looseFrom: number | null) => ShapeDrive;
}

/** Even-tempered cars: the scenario is to show the book, not to try the advice to its limits. */
const CONDITIONS = { scatter: 0.4, soak: 0.5, falsePulls: 0, steepness: 1 };

/** Draws the response of a practice car that rises as a healthy one does over the controller's range. */
export function demoResponse(seed: number, range: SettingRange): DemoResponse {
  const [entry] = DEVELOPMENT_SHAPES.filter(({ shape }) => shape.kind === 'healthy');
  if (entry === undefined) throw new Error('practice-car has no healthy shape');
  const car: ShapeCar = {
    ...drawShapeCar({ ...entry, seed, conditions: CONDITIONS }),
    controller: { dutyMin: range.min, dutyMax: range.max, dutyStep: range.step },
  };
  const { truth } = car;
  const baseKpa = truth.meanKpa(range.min);
  return {
    baseKpa: Math.round(baseKpa),
    drive: (visit, looseFrom) =>
      driveShapeCar({
        ...car,
        seed: seed * 100 + visit,
        truth: {
          ...truth,
          // With its line off the actuator sees full boost: whatever the duty, the spring alone decides.
          fault: looseFrom === null ? null : { fromPull: looseFrom, meanKpa: () => baseKpa },
        },
      }),
  };
}

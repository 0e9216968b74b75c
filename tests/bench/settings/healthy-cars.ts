import { drawShapeCar, SEEN_SHAPES, type ShapeCar } from '@pullbook/practice-car';

const HEALTHY = SEEN_SHAPES.filter(({ shape }) => shape.kind === 'healthy');

/** A healthy practice car, every kind in turn. */
export function drawHealthyCar(seed: number): ShapeCar {
  const entry = HEALTHY[seed % HEALTHY.length];
  if (entry === undefined) throw new Error('the catalogue has no healthy car');
  return drawShapeCar({ shape: entry.shape, rises: entry.rises, seed: 700_000 + seed });
}

/** The setting of its controller that makes the target best while the car is half soaked with heat. */
export function goodDuty({ controller, goal, truth }: ShapeCar): number {
  const soak = 1 + truth.soakShiftRatio / 2;
  let best = controller.dutyMin;
  for (let duty = controller.dutyMin; duty <= controller.dutyMax; duty += controller.dutyStep) {
    const miss = Math.abs(truth.meanKpa(duty) * soak - goal.targetKpa);
    if (miss < Math.abs(truth.meanKpa(best) * soak - goal.targetKpa)) best = duty;
  }
  return best;
}

import { drawNormal, seededRandom, type ShapeCar } from '@pullbook/practice-car';
import type { EarlierCar } from '@pullbook/tuning-math';
import type { CarlessRun } from './tune-car.js';

/** How cars of one build differ: shift along duty, points, and level, share; reasoned, common practice, no source. */
const SHIFT_SPREAD = 2.5;
const LEVEL_SPREAD = 0.03;

/** Which earlier cars a lot has on record. */
export interface EarlierOrder {
  readonly count: number;
  /** Cars of the build, or by mistake those of another build. */
  readonly whose: 'own' | 'another';
}

/** What is on record before the car of today comes. */
export const RECORDS: readonly (readonly [string, EarlierOrder])[] = [
  ['none', { count: 0, whose: 'own' }],
  ['1 of the build', { count: 1, whose: 'own' }],
  ['4 of the build', { count: 4, whose: 'own' }],
  ['4 of another build, by mistake', { count: 4, whose: 'another' }],
];

/**
 * What earlier cars of a build left in the book. The build's own response is drawn around the present car, which
 * deviates from it as the earlier ones do; each of those was tuned by hand for a target of its own.
 */
export function earlierCarsOf(
  car: ShapeCar,
  { count }: EarlierOrder,
  tune: (sibling: ShapeCar) => CarlessRun,
): EarlierCar[] {
  const random = seededRandom(car.seed * 31 + 7);
  const deviate = (): Deviation => ({
    shift: SHIFT_SPREAD * drawNormal(random),
    level: 1 + LEVEL_SPREAD * drawNormal(random),
  });
  const own = deviate();
  return Array.from({ length: count }, (_, index) => {
    const sibling = siblingOf(car, between(own, deviate()), index);
    const { pulls } = tune(sibling);
    return { baseKpa: sibling.baseKpa, pulls: pulls.map(({ duty, peakKpa }) => ({ duty, peakKpa })) };
  });
}

interface Deviation {
  readonly shift: number;
  readonly level: number;
}

/** From the present car to a sibling, by way of the build that both deviate from. */
function between(own: Deviation, other: Deviation): Deviation {
  return { shift: other.shift - own.shift, level: other.level / own.level };
}

function siblingOf(car: ShapeCar, { shift, level }: Deviation, index: number): ShapeCar {
  const { truth, goal } = car;
  const meanKpa = (duty: number): number => level * truth.meanKpa(Math.min(Math.max(duty - shift, 0), 100));
  const asked = 0.9 + 0.05 * (index % 4);
  return {
    ...car,
    seed: car.seed * 17 + index,
    goal: {
      targetKpa: asked * goal.targetKpa,
      toleranceKpa: asked * goal.toleranceKpa,
      ceilingKpa: asked * goal.ceilingKpa,
    },
    truth: { ...truth, meanKpa, fault: null },
  };
}

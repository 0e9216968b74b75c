import { adviseDuty, TABLE_POINTS, tabulateCurves, type CurveLibrary } from '@pullbook/tuning-math';
import type { ShapeCar } from '@pullbook/practice-car';
import { CAR_SETS, type CarSet } from './car-sets.js';
import { drawCars } from './draw-cars.js';
import type { Method } from './tune-car.js';

/** The name of its lots. */
export const FORESEEING = 'knows how the cars are drawn';

/** Seed of the cars whose responses it knows; no lot has it. */
const SEED = 990_001;
/** As many responses as the advice has. */
const CURVES = 9_000;
/** Cars drawn for them: some kinds have no healthy response. */
const CARS = 12_000;

const libraries = new Map<CarSet, CurveLibrary>();

/**
 * Our advice, but with responses drawn from the very formulas of the cars in place of its own: what it would be worth to
 * know how responses are spread before the first pull, without knowing this car's.
 */
export function foreseeingMethod(set: CarSet): Method {
  const known = libraries.get(set) ?? tabulateCurves(risesOf(set));
  libraries.set(set, known);
  return (request) => {
    const { action, duty, reasons } = adviseDuty(request, known);
    return { action, duty, code: reasons[0]?.code };
  };
}

/** Taken in turn from every kind, so that a part of them is as mixed as the whole. */
function risesOf(set: CarSet): Float64Array[] {
  const kinds = new Map<string, ShapeCar[]>();
  for (const car of drawCars(CAR_SETS[set], { count: CARS, seed: SEED })) {
    if (car.shape.kind !== 'healthy' && car.shape.kind !== 'out-of-reach') continue;
    const known = kinds.get(car.shape.name);
    if (known) known.push(car);
    else kinds.set(car.shape.name, [car]);
  }
  const longest = Math.max(...[...kinds.values()].map((cars) => cars.length));
  const mixed = Array.from({ length: longest }, (_, turn) =>
    [...kinds.values()].flatMap((cars) => cars.slice(turn, turn + 1)),
  ).flat();
  return mixed.slice(0, CURVES).map(riseOf);
}

function riseOf({ truth, goal }: ShapeCar): Float64Array {
  const foot = truth.meanKpa(0);
  const unit = Math.max(goal.targetKpa - foot, 1e-6 * foot);
  return Float64Array.from({ length: TABLE_POINTS }, (_, duty) => (truth.meanKpa(duty) - foot) / unit);
}

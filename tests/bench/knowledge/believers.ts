import type { RiseDraw, ShapeCar } from '@pullbook/practice-car';
import { CAR_SETS, type CarSet } from '../advice/car-sets.js';
import { METHODS, OURS } from '../advice/methods.js';
import type { Method } from '../advice/tune-car.js';
import { believingMethod, type Boldness } from './believing-method.js';

/** Near what is asked of the advice, on development cars. */
const CAREFUL: Boldness = { confidence: 0.94, riskLimit: 0.002 };
/** Fewer pulls, more of everything else. */
const BOLD: Boldness = { confidence: 0.9, riskLimit: 0.005 };

/** Guesses of one who has one formula to think of, and of one who has many, for each. */
const OF_ONE = 1500;
const OF_EACH = 300;

/** Who tunes: what it knows of a car before the first pull. */
export type Who = keyof typeof BELIEVERS | typeof OURS;

interface Knows {
  readonly says: string;
  readonly formulasFor: (car: ShapeCar, formulas: ReadonlyMap<string, RiseDraw>) => RiseDraw[];
  readonly perFormula: number;
  readonly boldness: Boldness;
}

const its = ({ shape }: ShapeCar, formulas: ReadonlyMap<string, RiseDraw>): RiseDraw[] =>
  [...formulas].filter(([name]) => name === shape.name).map(([, rise]) => rise);
const all = (_: ShapeCar, formulas: ReadonlyMap<string, RiseDraw>): RiseDraw[] => [...formulas.values()];
const others = ({ shape }: ShapeCar, formulas: ReadonlyMap<string, RiseDraw>): RiseDraw[] =>
  [...formulas].filter(([name]) => name !== shape.name).map(([, rise]) => rise);

/** Believers by how much they know, most first. */
export const BELIEVERS = {
  own: { says: "knows the car's own formula", formulasFor: its, perFormula: OF_ONE, boldness: CAREFUL },
  'own, bold': { says: 'the same, bold', formulasFor: its, perFormula: OF_ONE, boldness: BOLD },
  all: { says: 'knows all formulas', formulasFor: all, perFormula: OF_EACH, boldness: CAREFUL },
  'all, bold': { says: 'the same, bold', formulasFor: all, perFormula: OF_EACH, boldness: BOLD },
  others: {
    says: "knows all formulas but the car's own",
    formulasFor: others,
    perFormula: OF_EACH,
    boldness: CAREFUL,
  },
} as const satisfies Readonly<Record<string, Knows>>;

/** How `who` tunes this car. */
export function methodOf(who: Who, car: ShapeCar, set: CarSet): Method {
  if (who === OURS) return METHODS.get(OURS) as Method;
  const { formulasFor, perFormula, boldness } = BELIEVERS[who];
  return believingMethod(car, { formulas: formulasFor(car, formulasOf(set)), perFormula, boldness });
}

/** The formulas of a set's healthy cars by name. */
function formulasOf(set: CarSet): Map<string, RiseDraw> {
  const healthy = CAR_SETS[set].filter(({ shape }) => shape.kind === 'healthy');
  return new Map(
    healthy.flatMap(({ shape, rises }) => rises.map((rise): [string, RiseDraw] => [shape.name, rise])),
  );
}

import type { CarLimits, CeilingCause, Mechanics } from '@pullbook/contracts';
import { buildCeiling, ceilingMargins, type CeilingLimits } from '@pullbook/tuning-math';
import { injectorLimit, mapLimit, type ComputedLimit } from './computed-limits.js';
import { readEngineInputs } from './engine-inputs.js';
import { limitNames } from './limit-names.js';
import { mapOf, mapSourceOf, storedMapOf } from './stored-map.js';

/** What the ceiling of a car follows from. */
export interface CeilingCar {
  readonly limits: CarLimits;
  readonly mechanics: Mechanics;
  /** The compressor map as it stands in the book; read only where it is needed. */
  readonly storedMap: unknown;
}

/** One limit that counts, after its margin. */
export interface CountedLimit {
  readonly cause: CeilingCause;
  /** In the words of the workshop: 'over-boost cut', ... */
  readonly name: string;
  readonly statedKpa: number;
  readonly marginKpa: number;
  readonly limitKpa: number;
  readonly headroomKpa: number;
}

/** The highest ceiling that any preset of a car may have, and why. */
export interface BuiltCeiling {
  readonly ceilingKpa: number;
  readonly binds: CountedLimit;
  /** Lowest first. */
  readonly counted: readonly CountedLimit[];
}

/**
 * The one rule for ceilings: the lowest of all limits that are known of a car, over-boost cut and sensor less their
 * margins. What follows from engine data counts where all that it rests on was entered; an estimate never binds.
 *
 * @returns null where no limit is known
 */
export function ceilingOfCar(car: CeilingCar): BuiltCeiling | null {
  const { injectors, map } = computedLimits(car);
  const entered = Object.entries(car.limits).filter(([, kpa]) => kpa !== null);
  const limits: CeilingLimits = {
    ...Object.fromEntries(entered),
    ...(injectors.state === 'known' && injectors.kpa !== null ? { injectorKpa: injectors.kpa } : {}),
    ...(map.state === 'known' && map.kpa !== null ? { mapKpa: map.kpa } : {}),
  };
  if (Object.keys(limits).length === 0) return null;
  const ceiling = buildCeiling(limits, ceilingMargins(limits));
  const counted = ceiling.limits.flatMap(({ cause, ...limit }) =>
    cause === 'agreed' ? [] : [{ ...limit, cause, name: limitNames[cause] }],
  );
  const [binds] = counted;
  return binds === undefined ? null : { ceilingKpa: ceiling.ceilingKpa, binds, counted };
}

/** Why that limit stands where it stands: 'over-boost cut, 160 kPa less 5 kPa'. */
export function sayLimit({ name, statedKpa, marginKpa }: CountedLimit): string {
  return `${name}, ${statedKpa} kPa${marginKpa === 0 ? '' : ` less ${marginKpa} kPa`}`;
}

/** What engine data say of a car's ceiling. */
export interface ComputedLimits {
  readonly injectors: ComputedLimit;
  readonly map: ComputedLimit;
}

const MOST_KEPT = 200;
/** The same data give the same answer; stepping over a map takes tens of milliseconds, and every advice asks. */
const kept = new Map<string, ComputedLimits>();

/** The limits that follow from a car's engine data. */
export function computedLimits({ mechanics, storedMap }: Omit<CeilingCar, 'limits'>): ComputedLimits {
  const inputs = readEngineInputs(mechanics);
  const key = JSON.stringify([inputs.list, mapSourceOf(storedMap)]);
  const known = kept.get(key);
  if (known !== undefined) return known;
  const map = mapOf(storedMapOf(storedMap));
  const found = { injectors: injectorLimit(inputs, map), map: mapLimit(inputs, map) };
  kept.set(key, found);
  const [oldest] = kept.keys();
  if (kept.size > MOST_KEPT && oldest !== undefined) kept.delete(oldest);
  return found;
}

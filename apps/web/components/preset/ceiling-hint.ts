import type { CarLimits } from '@pullbook/contracts';
import {
  buildCeiling,
  ceilingMargins,
  formatPressureBound,
  type CeilingCause,
  type CeilingLimits,
} from '@pullbook/tuning-math';
import type { PersonsUnits } from '../units/use-units';

/** The limits of a car, as people say them. */
export const limitNames: Readonly<Record<keyof CarLimits, string>> = {
  overBoostCutKpa: 'over-boost cut',
  sensorFullScaleKpa: 'sensor full scale',
  actuatorKpa: 'actuator',
  turboKpa: 'turbo',
  engineKpa: 'engine',
};

const keyOf: Readonly<Partial<Record<CeilingCause, keyof CarLimits>>> = {
  'over-boost-cut': 'overBoostCutKpa',
  'sensor-full-scale': 'sensorFullScaleKpa',
  actuator: 'actuatorKpa',
  turbo: 'turboKpa',
  engine: 'engineKpa',
};

export interface BindingLimit {
  readonly name: string;
  /** As entered. */
  readonly statedKpa: number;
  /** After what is kept below over-boost cut and sensor. */
  readonly kpa: number;
}

/**
 * The lowest limit on record after its margin; null where none is known. What follows from engine data stands on the
 * engine page.
 */
export function findBindingLimit(limits: CarLimits): BindingLimit | null {
  const given: CeilingLimits = Object.fromEntries(Object.entries(limits).filter(([, kpa]) => kpa !== null));
  if (Object.keys(given).length === 0) return null;
  const { binds, ceilingKpa, limits: found } = buildCeiling(given, ceilingMargins(given));
  const key = keyOf[binds];
  const lowest = found[0];
  if (key === undefined || lowest === undefined) return null;
  return { name: limitNames[key], statedKpa: lowest.statedKpa, kpa: ceilingKpa };
}

/** How high a ceiling may stand and which of the car's limits says so, in one sentence. */
export function sayCeilingHint(limits: CarLimits, units: PersonsUnits): string {
  const binding = findBindingLimit(limits);
  if (binding === null)
    return 'No limit of this car is on record yet: enter what you know on the car’s page.';
  return sayBinding(binding, units);
}

/** Which limit binds, what is kept below it, in one sentence. */
export function sayBinding(binding: BindingLimit, units: PersonsUnits): string {
  const stated = `${binding.name}, ${units.write(binding.statedKpa)}`;
  if (binding.kpa === binding.statedKpa) return `This car’s lowest limit: ${stated}.`;
  // As it can be typed: never rounded up past the limit.
  const highest = formatPressureBound(binding.kpa, units.pressure, 'less');
  return `This car’s lowest limit: ${stated}; a ceiling stays below it, at ${highest} ${units.pressureWord} or less.`;
}

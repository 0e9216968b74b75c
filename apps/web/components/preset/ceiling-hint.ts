import type { CarLimits } from '@pullbook/contracts';
import type { PersonsUnits } from '../units/use-units';

/** The limits of a car, as people say them. */
export const limitNames: Readonly<Record<keyof CarLimits, string>> = {
  overBoostCutKpa: 'over-boost cut',
  sensorFullScaleKpa: 'sensor full scale',
  actuatorKpa: 'actuator',
  turboKpa: 'turbo',
  engineKpa: 'engine',
};

export interface BindingLimit {
  readonly name: string;
  readonly kpa: number;
}

/** The lowest limit that is known: the one that binds every ceiling; null where none is known. */
export function findBindingLimit(limits: CarLimits): BindingLimit | null {
  const known = (Object.keys(limitNames) as (keyof CarLimits)[]).flatMap((key) => {
    const kpa = limits[key];
    return kpa === null ? [] : [{ name: limitNames[key], kpa }];
  });
  return known.reduce<BindingLimit | null>(
    (low, one) => (low === null || one.kpa < low.kpa ? one : low),
    null,
  );
}

/** Which of the car's limits binds, in one sentence. */
export function sayCeilingHint(limits: CarLimits, units: PersonsUnits): string {
  const binding = findBindingLimit(limits);
  if (binding === null)
    return 'No limit of this car is on record yet: enter what you know on the car’s page.';
  return `This car’s lowest limit: ${binding.name}, ${units.write(binding.kpa)}.`;
}

import type { Car } from '@pullbook/contracts';
import { useCarCeiling } from '../../queries/engine/use-car-ceiling';
import type { PersonsUnits } from '../units/use-units';
import { sayBinding, sayCeilingHint } from './ceiling-hint';

/** How high a ceiling may stand and which limit says so; without network by the limits on record alone. */
export function useCeilingHint(car: Pick<Car, 'id' | 'limits'>, units: PersonsUnits): string {
  const binding = useCarCeiling(car.id).data?.limits.find(({ state }) => state === 'binding');
  if (binding === undefined || binding.statedKpa === null || binding.limitKpa === null)
    return sayCeilingHint(car.limits, units);
  return sayBinding({ name: binding.name, statedKpa: binding.statedKpa, kpa: binding.limitKpa }, units);
}

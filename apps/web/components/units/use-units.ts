'use client';

import { useSignedInMe } from '../../queries/people/use-me';
import { unitsOf, type PersonsUnits } from './units-of';

export type { PersonsUnits } from './units-of';

/** How the signed-in person reads pressures and temperatures. */
export function useUnits(): PersonsUnits {
  return unitsOf(useSignedInMe().units);
}

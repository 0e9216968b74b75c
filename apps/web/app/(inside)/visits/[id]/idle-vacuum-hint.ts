import { expectedIdleVacuum, parsePressure, standardAtmosphere } from '@pullbook/tuning-math';
import type { PersonsUnits } from '../../../../components/units/units-of';

const HIGHEST_M = 4500;
const LOWEST_M = -500;

/**
 * What a warm, healthy engine idles at where the car stands, and whether the reading lies there: a hint for the person
 * at the gauge, never a reason to pass or to fail.
 *
 * @param barometerAbsKpa of the tuning session; sea level is taken where nobody measured
 * @param typed reading as typed, gauge, below zero; may be empty
 */
export function idleVacuumHint(barometerAbsKpa: number | null, typed: string, units: PersonsUnits): string {
  const heightM = barometerAbsKpa === null ? 0 : heightOf(barometerAbsKpa);
  const { lowKpa, highKpa } = expectedIdleVacuum(heightM);
  const place = barometerAbsKpa === null ? 'near sea level' : `at about ${Math.round(heightM / 50) * 50} m`;
  const usual = `A warm, healthy engine ${place} usually shows ${units.figure(-lowKpa)} to ${units.write(-highKpa)}`;
  return `${usual}, steady. ${judge(typed, units, { lowKpa, highKpa })}A hint: cams with long overlap read less.`;
}

/** Height in the standard atmosphere at which the barometer reads this; within the range of the rule. */
function heightOf(barometerAbsKpa: number): number {
  let [low, high] = [LOWEST_M, HIGHEST_M];
  for (let step = 0; step < 30; step += 1) {
    const middle = (low + high) / 2;
    if (standardAtmosphere(middle).pressureAbsKpa > barometerAbsKpa) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

function judge(typed: string, units: PersonsUnits, range: { lowKpa: number; highKpa: number }): string {
  if (typed.trim() === '') return '';
  let vacuumKpa: number;
  try {
    vacuumKpa = -parsePressure(typed, units.pressure);
  } catch {
    return '';
  }
  if (vacuumKpa < range.lowKpa) return 'Yours is less vacuum than that: look for a leak or late timing. ';
  if (vacuumKpa > range.highKpa) return 'Yours is more vacuum than that: check the gauge. ';
  return 'Yours lies within it. ';
}

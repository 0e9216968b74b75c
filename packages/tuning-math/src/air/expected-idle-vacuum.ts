import { requireNumber } from '../require-number.js';
import { convertPressure } from '../units/convert-pressure.js';
import { standardAtmosphere } from './standard-atmosphere.js';

const SEA_LEVEL_LOW_IN_HG = 17;
const SEA_LEVEL_HIGH_IN_HG = 22;
const IN_HG_PER_1000_FT = 1;
const M_PER_1000_FT = 304.8;

/** What a warm, healthy engine usually idles at; for reading beside the gauge, not for passing or failing. */
export interface IdleVacuumHint {
  /** Vacuum, kPa below the surrounding air (positive). */
  readonly lowKpa: number;
  readonly highKpa: number;
  /** Fall of the standard barometer from sea level to here: what the common rule stands for. */
  readonly barometerFallKpa: number;
}

/**
 * Idle vacuum to expect at an altitude: 17 to 22 inHg near sea level, 1 inHg less for each 1000 ft. A hint:
 * engines with long valve overlap read well below, some six-cylinder engines idle healthily at 15 inHg.
 *
 * @param altitudeM geopotential altitude, -500 to 4500 m
 * @returns range in kPa below the surrounding air
 * @throws NotFiniteError, OutOfRangeError
 * Source: common practice, no source. The barometer's own fall is given beside it: 1.07 inHg in the first
 * 1000 ft, 0.86 at 8000 ft.
 * @example expectedIdleVacuum(0) // 57.6 to 74.5 kPa
 */
export function expectedIdleVacuum(altitudeM: number): IdleVacuumHint {
  requireNumber('expectedIdleVacuum', 'altitudeM', altitudeM, { min: -500, max: 4500 });
  const fallInHg = (altitudeM / M_PER_1000_FT) * IN_HG_PER_1000_FT;
  const barometerFallKpa =
    standardAtmosphere(0).pressureAbsKpa - standardAtmosphere(altitudeM).pressureAbsKpa;
  return {
    lowKpa: convertPressure(SEA_LEVEL_LOW_IN_HG - fallInHg, 'inHg', 'kPa'),
    highKpa: convertPressure(SEA_LEVEL_HIGH_IN_HG - fallInHg, 'inHg', 'kPa'),
    barometerFallKpa,
  };
}

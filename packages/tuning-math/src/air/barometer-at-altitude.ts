import { requireNumber } from '../require-number.js';
import { absoluteKpa } from '../units/absolute-kpa.js';
import type { AbsoluteKpa } from '../units/pressure-kinds.js';
import { PRESSURE_EXPONENT, STANDARD_PRESSURE_ABS_KPA, standardAtmosphere } from './standard-atmosphere.js';

/** What a weather report and a map say of a place. */
export interface PlaceAir {
  /** Pressure reduced to sea level as weather reports give it (QNH), absolute kPa, 87 to 109. */
  readonly seaLevelAbsKpa: number;
  /** Geopotential altitude, -5000 to 11 000 m. */
  readonly altitudeM: number;
}

/**
 * What a barometer reads at a place, from the sea-level pressure of the weather report. Weather reports
 * reduce by the standard atmosphere, so the station's own pressure comes back the same way.
 *
 * @returns absolute kPa
 * @throws NotFiniteError, OutOfRangeError
 * Source: altimeter setting in the standard atmosphere (ICAO Doc 7488): the altitude that has the sea-level
 * pressure in the standard atmosphere shifts the whole column.
 * @example barometerAtAltitude({ seaLevelAbsKpa: 101.325, altitudeM: 1000 }) // 89.8746
 */
export function barometerAtAltitude({ seaLevelAbsKpa, altitudeM }: PlaceAir): AbsoluteKpa {
  // The lowest and highest sea-level pressures ever reported are about 87 and 108.5 kPa.
  requireNumber('barometerAtAltitude', 'seaLevelAbsKpa', seaLevelAbsKpa, { min: 87, max: 109 });
  const standard = standardAtmosphere(altitudeM);
  const root = 1 / PRESSURE_EXPONENT;
  const shift = (seaLevelAbsKpa / STANDARD_PRESSURE_ABS_KPA) ** root - 1;
  const ratio = (standard.pressureAbsKpa / STANDARD_PRESSURE_ABS_KPA) ** root + shift;
  return absoluteKpa(STANDARD_PRESSURE_ABS_KPA * ratio ** PRESSURE_EXPONENT);
}

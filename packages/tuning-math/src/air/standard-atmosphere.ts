import { requireNumber } from '../require-number.js';
import { absoluteKpa } from '../units/absolute-kpa.js';
import type { AbsoluteKpa } from '../units/pressure-kinds.js';

/** Sea-level pressure of the standard atmosphere, absolute kPa. */
export const STANDARD_PRESSURE_ABS_KPA = 101.325;

const SEA_LEVEL_K = 288.15;
const LAPSE_K_PER_M = 0.0065;
const GRAVITY_M_PER_S2 = 9.80665;
// The 1976 values; the later CODATA gas constant would change the fifth digit.
const MOLAR_GAS_J_PER_MOL_K = 8.31432;
const MOLAR_MASS_KG_PER_MOL = 0.0289644;
const GAS_CONSTANT = MOLAR_GAS_J_PER_MOL_K / MOLAR_MASS_KG_PER_MOL;
/** Power of the temperature ratio that gives the pressure ratio, 5.255 876. */
export const PRESSURE_EXPONENT = GRAVITY_M_PER_S2 / (GAS_CONSTANT * LAPSE_K_PER_M);
const EARTH_RADIUS_M = 6_356_766;
const LOWEST_M = -5000;
const HIGHEST_M = 11_000;

/** Air of the standard atmosphere at one altitude. */
export interface StandardAir {
  readonly temperatureK: number;
  readonly pressureAbsKpa: AbsoluteKpa;
  readonly densityKgPerM3: number;
}

/**
 * Temperature, pressure and density of the standard atmosphere in the troposphere.
 *
 * @param geopotentialAltitudeM -5000 to 11 000 m. Maps and GPS give geometric heights, which differ by
 *   0.5 m at 2000 m: see `geopotentialAltitude`
 * @throws NotFiniteError, OutOfRangeError
 * Source: U.S. Standard Atmosphere 1976, eqs 23, 33a, 42 (ISO 2533:1975 gives the same values here).
 * @example standardAtmosphere(1000) // 281.65 K, 89.8746 kPa, 1.11164 kg/m³
 */
export function standardAtmosphere(geopotentialAltitudeM: number): StandardAir {
  requireNumber('standardAtmosphere', 'geopotentialAltitudeM', geopotentialAltitudeM, {
    min: LOWEST_M,
    max: HIGHEST_M,
  });
  const temperatureK = SEA_LEVEL_K - LAPSE_K_PER_M * geopotentialAltitudeM;
  const pressureAbsKpa = absoluteKpa(
    STANDARD_PRESSURE_ABS_KPA * (temperatureK / SEA_LEVEL_K) ** PRESSURE_EXPONENT,
  );
  const densityKgPerM3 = (pressureAbsKpa * 1000) / (GAS_CONSTANT * temperatureK);
  return { temperatureK, pressureAbsKpa, densityKgPerM3 };
}

/**
 * Geopotential altitude of a geometric height above sea level.
 *
 * @param geometricHeightM -5000 to 11 019 m
 * @returns m; smaller than the height by about height² / 6 356 766
 * @throws NotFiniteError, OutOfRangeError
 * Source: U.S. Standard Atmosphere 1976, eq. 18.
 */
export function geopotentialAltitude(geometricHeightM: number): number {
  requireNumber('geopotentialAltitude', 'geometricHeightM', geometricHeightM, { min: LOWEST_M, max: 11_019 });
  return (EARTH_RADIUS_M * geometricHeightM) / (EARTH_RADIUS_M + geometricHeightM);
}

import { vapourPressure } from './vapour-pressure.js';
import { checkAirReading, type AirReading } from './dry-air-pressure.js';

const GAS_CONSTANT_J_PER_MOL_K = 8.314472;
const WATER_KG_PER_MOL = 18.01528e-3;
const DRY_AIR_KG_PER_MOL = 28.96546e-3;
const ICE_POINT_K = 273.15;

/** Density of moist air, and whether the formula is published for that air. */
export interface MoistAirDensity {
  readonly densityKgPerM3: number;
  /** Within 600 to 1100 hPa and 15 to 27 °C, where the formula is stated to 22 parts in a million. */
  readonly withinPublishedRange: boolean;
}

/**
 * Density of moist air with 400 parts in a million of carbon dioxide.
 *
 * @param air barometer, temperature 0 to 60 °C (the vapour formula needs it above freezing), humidity
 * @returns kg/m³, and a flag outside the published range: the value is still given there
 * @throws NotFiniteError, OutOfRangeError
 * Source: Picard, Davis, Gläser, Fujii, "Revised formula for the density of moist air (CIPM-2007)",
 * Metrologia 45 (2008) 149-155.
 * @example moistAirDensity({ barometerAbsKpa: 101.325, temperatureC: 20, humidityPct: 50 }) // 1.199314
 */
export function moistAirDensity(air: AirReading): MoistAirDensity {
  checkAirReading('moistAirDensity', air);
  const pressurePa = air.barometerAbsKpa * 1000;
  const t = air.temperatureC;
  const temperatureK = t + ICE_POINT_K;
  const enhancement = 1.00062 + 3.14e-8 * pressurePa + 5.6e-7 * t * t;
  const saturationPa = vapourPressure(t, 'cipm-2007') * 1000;
  const vapourFraction = ((air.humidityPct / 100) * enhancement * saturationPa) / pressurePa;
  const z = compressibility(pressurePa / temperatureK, t, vapourFraction);
  const dry = (pressurePa * DRY_AIR_KG_PER_MOL) / (z * GAS_CONSTANT_J_PER_MOL_K * temperatureK);
  const densityKgPerM3 = dry * (1 - vapourFraction * (1 - WATER_KG_PER_MOL / DRY_AIR_KG_PER_MOL));
  const withinPublishedRange = pressurePa >= 60_000 && pressurePa <= 110_000 && t >= 15 && t <= 27;
  return { densityKgPerM3, withinPublishedRange };
}

/** Z of the paper's eq. 4, from p/T in Pa/K, °C and the mole fraction of water vapour. */
function compressibility(pressureOverT: number, t: number, x: number): number {
  const linear =
    1.58123e-6 -
    2.9331e-8 * t +
    1.1043e-10 * t * t +
    (5.707e-6 - 2.051e-8 * t) * x +
    (1.9898e-4 - 2.376e-6 * t) * x * x;
  return 1 - pressureOverT * linear + pressureOverT ** 2 * (1.83e-11 - 0.765e-8 * x * x);
}

import { requireNumber } from '../require-number.js';
import { absoluteKpa } from '../units/absolute-kpa.js';
import type { AbsoluteKpa } from '../units/pressure-kinds.js';
import { vapourPressure, type VapourFormula } from './vapour-pressure.js';

/** Air as a barometer, a thermometer and a hygrometer read it. */
export interface AirReading {
  /** Barometer at the place, absolute kPa, 30 to 115. */
  readonly barometerAbsKpa: number;
  /** °C, -45 to 60. */
  readonly temperatureC: number;
  /** Relative humidity, 0 to 100 %. */
  readonly humidityPct: number;
}

/**
 * Pressure of the dry part of the air: barometer less the water vapour in it. The power-correction formulas
 * want this one; leaving humidity out costs up to some per cent on a warm wet day.
 *
 * @returns absolute kPa
 * @throws NotFiniteError, OutOfRangeError
 * Source: Dalton's law; vapour pressure by the named formula (WMO Magnus by default).
 * @example dryAirPressure({ barometerAbsKpa: 98, temperatureC: 30, humidityPct: 50 }) // 95.883
 */
export function dryAirPressure(air: AirReading, formula: VapourFormula = 'wmo-magnus'): AbsoluteKpa {
  checkAirReading('dryAirPressure', air);
  const vapourAbsKpa = (air.humidityPct / 100) * vapourPressure(air.temperatureC, formula);
  return absoluteKpa(air.barometerAbsKpa - vapourAbsKpa);
}

/** Refuses a reading that no weather on land gives. @throws NotFiniteError, OutOfRangeError */
export function checkAirReading(functionName: string, air: AirReading): void {
  requireNumber(functionName, 'barometerAbsKpa', air.barometerAbsKpa, { min: 30, max: 115 });
  requireNumber(functionName, 'temperatureC', air.temperatureC, { min: -45, max: 60 });
  requireNumber(functionName, 'humidityPct', air.humidityPct, { min: 0, max: 100 });
}

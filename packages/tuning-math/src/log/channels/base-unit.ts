import { PRESSURE_UNITS } from '../../units/index.js';
import { QUANTITY_UNITS, TEMPERATURE_UNITS } from '../../units/index.js';

/** base = value * scale + offset. */
export interface BaseConversion {
  readonly scale: number;
  readonly offset: number;
}

const STANDARD_GRAVITY = 9.80665;
const STOICHIOMETRIC_PETROL = 14.7;

const OTHER: Readonly<Record<string, number>> = {
  rpm: 1,
  krpm: 1000,
  rps: 60,
  radPerS: 30 / Math.PI,
  pct: 1,
  fraction: 100,
  lambda: 1,
  afr: 1 / STOICHIOMETRIC_PETROL,
  mPerS2: 1,
  g: STANDARD_GRAVITY,
  mV: 0.001,
};

/**
 * How a printed unit becomes the base unit of its dimension: kPa, r/min, km/h, %, °C, lambda, m/s², m.
 * Units without a base (V, deg, count) stay as they are.
 * Source: exact factors of PRESSURE_UNITS, QUANTITY_UNITS, TEMPERATURE_UNITS; 14.7 for petrol air-fuel
 * ratio is common practice, no source.
 */
export function baseConversion(unit: string): BaseConversion {
  if (isKey(PRESSURE_UNITS, unit)) return { scale: PRESSURE_UNITS[unit].kpaPerUnit, offset: 0 };
  if (isKey(QUANTITY_UNITS.speed, unit)) return { scale: QUANTITY_UNITS.speed[unit], offset: 0 };
  if (isKey(TEMPERATURE_UNITS, unit)) {
    const { kelvinPerDegree, atIcePoint } = TEMPERATURE_UNITS[unit];
    return { scale: kelvinPerDegree, offset: -atIcePoint * kelvinPerDegree };
  }
  if (isKey(QUANTITY_UNITS.length, unit)) return { scale: QUANTITY_UNITS.length[unit], offset: 0 };
  return { scale: OTHER[unit] ?? 1, offset: 0 };
}

function isKey<T extends object>(table: T, key: string): key is keyof T & string {
  return Object.hasOwn(table, key);
}

import { PRESSURE_UNITS, QUANTITY_UNITS, TEMPERATURE_UNITS } from '../../units/index.js';

/** How a printed unit becomes the base unit of its dimension: base = value * scale + offset. */
export interface BaseConversion {
  readonly base: string;
  readonly scale: number;
  readonly offset: number;
}

const STANDARD_GRAVITY = 9.80665;
const STOICHIOMETRIC_PETROL = 14.7;

const OTHER: Readonly<Record<string, readonly [base: string, scale: number]>> = {
  rpm: ['rpm', 1],
  krpm: ['rpm', 1000],
  rps: ['rpm', 60],
  radPerS: ['rpm', 30 / Math.PI],
  pct: ['pct', 1],
  fraction: ['pct', 100],
  lambda: ['lambda', 1],
  afr: ['lambda', 1 / STOICHIOMETRIC_PETROL],
  mPerS2: ['mPerS2', 1],
  g: ['mPerS2', STANDARD_GRAVITY],
  mV: ['V', 0.001],
};

/**
 * How a printed unit becomes the base unit of its dimension: kPa, r/min, km/h, %, °C, lambda, m/s², m, V.
 * Units without another of their dimension (deg, count) stay as they are.
 * Source: exact factors of PRESSURE_UNITS, QUANTITY_UNITS, TEMPERATURE_UNITS; 14.7 for petrol air-fuel
 * ratio is common practice, no source.
 */
export function baseConversion(unit: string): BaseConversion {
  if (isKey(PRESSURE_UNITS, unit)) return { base: 'kPa', scale: PRESSURE_UNITS[unit].kpaPerUnit, offset: 0 };
  if (isKey(QUANTITY_UNITS.speed, unit)) return { base: 'kmh', scale: QUANTITY_UNITS.speed[unit], offset: 0 };
  if (isKey(TEMPERATURE_UNITS, unit)) {
    const { kelvinPerDegree, atIcePoint } = TEMPERATURE_UNITS[unit];
    return { base: 'C', scale: kelvinPerDegree, offset: -atIcePoint * kelvinPerDegree };
  }
  if (isKey(QUANTITY_UNITS.length, unit)) return { base: 'm', scale: QUANTITY_UNITS.length[unit], offset: 0 };
  const [base, scale] = OTHER[unit] ?? [unit, 1];
  return { base, scale, offset: 0 };
}

function isKey<T extends object>(table: T, key: string): key is keyof T & string {
  return Object.hasOwn(table, key);
}

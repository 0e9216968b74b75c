import { PRESSURE_UNITS, type PressureUnit } from '../units/pressure-units.js';
import { TEMPERATURE_UNITS, type TemperatureUnit } from '../units/convert-temperature.js';

/** Units in which the samples of a channel are kept, whatever the file was written in. */
export const CHANNEL_BASE_UNITS = [
  'kPa',
  'rpm',
  'kmh',
  'pct',
  'C',
  'lambda',
  'deg',
  'count',
  'mPerS2',
  'm',
  'V',
  's',
  'none',
] as const;
export type ChannelBaseUnit = (typeof CHANNEL_BASE_UNITS)[number];

/** How a person reads a channel: shown = base * scale + offset. */
export interface ChannelUnit {
  /** As it stands behind a figure; empty for a bare number. */
  readonly word: string;
  readonly scale: number;
  readonly offset: number;
  /** Decimals that are worth reading. */
  readonly fractionDigits: number;
}

const OTHER: Readonly<Record<Exclude<ChannelBaseUnit, 'kPa' | 'C'>, readonly [string, number]>> = {
  rpm: ['r/min', 0],
  kmh: ['km/h', 1],
  pct: ['%', 1],
  lambda: ['λ', 3],
  deg: ['°', 1],
  count: ['', 0],
  mPerS2: ['m/s²', 2],
  m: ['m', 1],
  V: ['V', 3],
  s: ['s', 3],
  none: ['', 3],
};
const PRESSURE_DIGITS: Partial<Record<PressureUnit, number>> = { kPa: 1, bar: 3, psi: 2 };

/** The unit in which a person with these units reads a channel. */
export function channelUnit(
  base: ChannelBaseUnit,
  person: { readonly pressure: PressureUnit; readonly temperature: TemperatureUnit },
): ChannelUnit {
  if (base === 'kPa') {
    const { kpaPerUnit } = PRESSURE_UNITS[person.pressure];
    const fractionDigits = PRESSURE_DIGITS[person.pressure] ?? 2;
    return { word: person.pressure, scale: 1 / kpaPerUnit, offset: 0, fractionDigits };
  }
  if (base === 'C') {
    const { kelvinPerDegree, atIcePoint } = TEMPERATURE_UNITS[person.temperature];
    const word = person.temperature === 'K' ? 'K' : `°${person.temperature}`;
    return { word, scale: 1 / kelvinPerDegree, offset: atIcePoint, fractionDigits: 1 };
  }
  const [word, fractionDigits] = OTHER[base];
  return { word, scale: 1, offset: 0, fractionDigits };
}

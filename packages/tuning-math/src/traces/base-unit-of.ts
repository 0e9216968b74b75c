import { CHANNEL_QUANTITIES } from '../log/channel-quantities.js';
import type { LogChannel } from '../log/log-samples.js';
import { PRESSURE_UNITS } from '../units/pressure-units.js';
import { TEMPERATURE_UNITS } from '../units/convert-temperature.js';
import { QUANTITY_UNITS } from '../units/quantity-units.js';
import { CHANNEL_BASE_UNITS, type ChannelBaseUnit } from './channel-unit.js';

const LIKE: Readonly<Record<string, ChannelBaseUnit>> = {
  krpm: 'rpm',
  rps: 'rpm',
  radPerS: 'rpm',
  fraction: 'pct',
  afr: 'lambda',
  g: 'mPerS2',
  mV: 'V',
};

/** The unit that the samples of a channel of a log have after reading: that of its quantity, else of its print. */
export function baseUnitOf({ quantity, unit }: Pick<LogChannel, 'quantity' | 'unit'>): ChannelBaseUnit {
  const ofQuantity = known(CHANNEL_QUANTITIES[quantity]);
  if (ofQuantity !== 'none') return ofQuantity;
  if (Object.hasOwn(PRESSURE_UNITS, unit)) return 'kPa';
  if (Object.hasOwn(QUANTITY_UNITS.speed, unit)) return 'kmh';
  if (Object.hasOwn(TEMPERATURE_UNITS, unit)) return 'C';
  if (Object.hasOwn(QUANTITY_UNITS.length, unit)) return 'm';
  return LIKE[unit] ?? known(unit);
}

function known(unit: string): ChannelBaseUnit {
  return CHANNEL_BASE_UNITS.find((base) => base === unit) ?? 'none';
}

import { CHANNEL_QUANTITIES } from '../log/channel-quantities.js';
import { baseConversion } from '../log/channels/base-unit.js';
import type { LogChannel } from '../log/log-samples.js';
import { CHANNEL_BASE_UNITS, type ChannelBaseUnit } from './channel-unit.js';

/** The unit that the samples of a channel of a log have after reading: that of its quantity, else of its print. */
export function baseUnitOf({ quantity, unit }: Pick<LogChannel, 'quantity' | 'unit'>): ChannelBaseUnit {
  return known(CHANNEL_QUANTITIES[quantity]) ?? known(baseConversion(unit).base) ?? 'none';
}

function known(unit: string): ChannelBaseUnit | null {
  return CHANNEL_BASE_UNITS.find((base) => base === unit && base !== 'none') ?? null;
}

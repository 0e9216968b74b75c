import { DEFAULT_CEILING_MARGINS, type CeilingLimits, type CeilingMargins } from './build-ceiling.js';

/**
 * Distances to keep from the limits of a car that must not be touched: the usual ones, or half of a limit that is so low
 * that the usual one would eat most of it. Use it where limits come from people and no ceiling may fail to be built.
 *
 * @param limits gauge kPa each, above 0
 * @returns kPa, each below its limit
 * Source: common practice, no source.
 * @example ceilingMargins({ overBoostCutKpa: 160, sensorFullScaleKpa: 4 }) // 5 kPa and 2 kPa
 */
export function ceilingMargins(limits: CeilingLimits): CeilingMargins {
  const { overBoostCutKpa, sensorFullScaleKpa } = DEFAULT_CEILING_MARGINS;
  return {
    overBoostCutKpa: Math.min(overBoostCutKpa, (limits.overBoostCutKpa ?? Infinity) / 2),
    sensorFullScaleKpa: Math.min(sensorFullScaleKpa, (limits.sensorFullScaleKpa ?? Infinity) / 2),
  };
}

import { requireNumber } from '../require-number.js';
import { gaugeKpa } from '../units/gauge-kpa.js';
import type { GaugeKpa } from '../units/pressure-kinds.js';
import { chargePath, type ChargePathInputs } from './charge-path.js';
import type { CompressorMap } from './compressor-map.js';

/** The engine's line over boost at its highest loaded speed, on a map. */
export interface MapLimit extends Omit<ChargePathInputs, 'intake' | 'map'> {
  readonly map: CompressorMap;
  readonly intake: Omit<ChargePathInputs['intake'], 'boostKpa'>;
  /** Margins to keep, % as `locateOnCompressorMap` gives them. */
  readonly chokeMarginPct: number;
  readonly surgeMarginPct: number;
}

const STEP_KPA = 1;
const HIGHEST_KPA = 400;

/**
 * Highest boost, in whole kPa, up to which the engine's line stays inside the map with the margins asked for.
 *
 * @returns gauge kPa, or null where the line never enters that part of the map
 * @throws NotFiniteError, OutOfRangeError
 * Cost: at most 400 runs of `chargePath`.
 * Source: `chargePath` stepped over boost; margins are common practice, no source.
 */
export function boostAtMapLimit(limit: MapLimit): GaugeKpa | null {
  requireNumber('boostAtMapLimit', 'chokeMarginPct', limit.chokeMarginPct, { min: 0, max: 50 });
  requireNumber('boostAtMapLimit', 'surgeMarginPct', limit.surgeMarginPct, { min: 0, max: 100 });
  let highest: GaugeKpa | null = null;
  for (let boost = 0; boost <= HIGHEST_KPA; boost += STEP_KPA) {
    const boostKpa = gaugeKpa(boost);
    const { location } = chargePath({ ...limit, intake: { ...limit.intake, boostKpa } });
    const inside =
      location?.place === 'inside' &&
      (location.chokeMarginPct ?? Infinity) >= limit.chokeMarginPct &&
      (location.surgeMarginPct ?? Infinity) >= limit.surgeMarginPct;
    if (inside) highest = boostKpa;
    else if (highest !== null) return highest;
  }
  return highest;
}

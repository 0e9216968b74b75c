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

const STEP_KPA = 5;
const FINE_STEP_KPA = 1;
const HIGHEST_KPA = 400;

/**
 * Highest boost, in whole kPa, up to which the engine's line stays inside the map with the margins asked for. It looks
 * every 5 kPa, then every 1 kPa where the line leaves: a part of the map less than 5 kPa wide may be missed.
 *
 * @returns gauge kPa, or null where the line never enters that part of the map
 * @throws NotFiniteError, OutOfRangeError
 * Cost: at most 85 runs of `chargePath`.
 * Source: `chargePath` stepped over boost; margins are common practice, no source.
 */
export function boostAtMapLimit(limit: MapLimit): GaugeKpa | null {
  requireNumber('boostAtMapLimit', 'chokeMarginPct', limit.chokeMarginPct, { min: 0, max: 50 });
  requireNumber('boostAtMapLimit', 'surgeMarginPct', limit.surgeMarginPct, { min: 0, max: 100 });
  const last = lastInside(limit, { from: 0, to: HIGHEST_KPA, step: STEP_KPA });
  if (last === null) return null;
  const fine = { from: last, to: last + STEP_KPA, step: FINE_STEP_KPA };
  return gaugeKpa(lastInside(limit, fine) ?? last);
}

interface Stretch {
  readonly from: number;
  readonly to: number;
  readonly step: number;
}

/** The last boost of a stretch that lies inside before the line leaves again; null where none does. */
function lastInside(limit: MapLimit, { from, to, step }: Stretch): number | null {
  let insideKpa: number | null = null;
  for (let boost = from; boost <= to; boost += step) {
    if (isInside(limit, boost)) insideKpa = boost;
    else if (insideKpa !== null) break;
  }
  return insideKpa;
}

function isInside(limit: MapLimit, boost: number): boolean {
  const { location } = chargePath({ ...limit, intake: { ...limit.intake, boostKpa: gaugeKpa(boost) } });
  return (
    location?.place === 'inside' &&
    (location.chokeMarginPct ?? Infinity) >= limit.chokeMarginPct &&
    (location.surgeMarginPct ?? Infinity) >= limit.surgeMarginPct
  );
}

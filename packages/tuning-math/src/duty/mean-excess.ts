import { normalShareBelow } from './normal-table.js';
import type { PeakMixture } from './peak-mixture.js';

/** Density of a standard normal at its middle. */
const PEAK_DENSITY = 1 / Math.sqrt(2 * Math.PI);
/** Spreads below the level where nothing is left above it. */
const NO_EXCESS = -6;

/**
 * Mean of how far the next reading is above a level (log of peak over target), nought where it is below.
 *
 * Source: unit normal loss; Raiffa & Schlaifer, Applied Statistical Decision Theory (1961), section 5.11, from memory.
 */
export function meanExcess({ weights, centres, places, peakSpreads }: PeakMixture, level: number): number {
  let excess = 0;
  for (let row = 0; row < weights.length; row += 1) {
    const spread = peakSpreads[places[row] as number] as number;
    const away = ((centres[row] as number) - level) / spread;
    if (away < NO_EXCESS) continue;
    const density = Math.exp(-0.5 * away * away) * PEAK_DENSITY;
    excess += (weights[row] as number) * spread * (density + away * normalShareBelow(away));
  }
  return excess;
}

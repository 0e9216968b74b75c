import { findRoot } from '../numerics/find-root.js';
import { normalShareBelow } from './normal-table.js';
import type { PeakMixture } from './peak-mixture.js';

/** How finely quantiles are told. */
export interface Fineness {
  /** Parts of the mixture are gathered into this many bins of centre before quantiles are sought. */
  readonly bins: number;
  /** Log. */
  readonly tolerance: number;
}

const FINE: Fineness = { bins: 40, tolerance: 1e-5 };
/** Ends of the search, in spreads beyond the outermost parts. */
const REACH = 8;

/**
 * Quantiles of the next reading, log peak over target.
 *
 * @param shares each inside (0, 1)
 * @param fineness left out: to a thousandth of a per cent
 * Cost: one pass over the mixture, then some 10 steps of each bin for each share.
 * Source: Brent's method on the distribution function.
 */
export function peakQuantiles(mixture: PeakMixture, shares: readonly number[], fineness = FINE): number[] {
  const parts = gather(mixture, fineness.bins);
  const lowest = Math.min(...parts.map(({ centre, spread }) => centre - REACH * spread));
  const highest = Math.max(...parts.map(({ centre, spread }) => centre + REACH * spread));
  return shares.map((share) => {
    const miss = (level: number): number => shareBelow(parts, level) - share;
    return findRoot(miss, { low: lowest, high: highest, tolerance: fineness.tolerance }).x;
  });
}

interface Part {
  readonly weight: number;
  readonly centre: number;
  readonly spread: number;
}

function gather({ weights, centres, places, peakSpreads }: PeakMixture, bins: number): Part[] {
  const [lowest, highest] = ends(centres);
  const perUnit = (bins - 1) / Math.max(highest - lowest, 1e-6);
  const sums = {
    weight: new Float64Array(bins),
    first: new Float64Array(bins),
    second: new Float64Array(bins),
  };
  weights.forEach((weight, row) => {
    const centre = centres[row] as number;
    const spread = peakSpreads[places[row] as number] as number;
    const bin = Math.floor((centre - lowest) * perUnit);
    sums.weight[bin] = (sums.weight[bin] as number) + weight;
    sums.first[bin] = (sums.first[bin] as number) + weight * centre;
    sums.second[bin] = (sums.second[bin] as number) + weight * (centre * centre + spread * spread);
  });
  return partsOf(sums);
}

function ends(values: Float64Array): [number, number] {
  let lowest = Infinity;
  let highest = -Infinity;
  for (const value of values) {
    if (value < lowest) lowest = value;
    if (value > highest) highest = value;
  }
  return [lowest, highest];
}

function partsOf(sums: { weight: Float64Array; first: Float64Array; second: Float64Array }): Part[] {
  const parts: Part[] = [];
  sums.weight.forEach((weight, bin) => {
    if (weight <= 0) return;
    const centre = (sums.first[bin] ?? 0) / weight;
    const variance = (sums.second[bin] ?? 0) / weight - centre * centre;
    parts.push({ weight, centre, spread: Math.sqrt(Math.max(variance, 1e-10)) });
  });
  return parts;
}

function shareBelow(parts: readonly Part[], level: number): number {
  let share = 0;
  for (const { weight, centre, spread } of parts)
    share += weight * normalShareBelow((level - centre) / spread);
  return share;
}

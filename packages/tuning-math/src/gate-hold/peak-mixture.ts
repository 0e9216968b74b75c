import { normalShareBelow } from '../duty/normal-table.js';
import { EARLY_SHARE, LET_GO_PLACE, MIDDLE_SHARE, riseAt } from './curve-family.js';
import type { HoldPosterior } from './overshoot-posterior.js';

/** The peak of a further pull at a hold: three normals for each curve of the belief. */
export interface PeakMixture {
  /** Share of each curve. */
  readonly weight: Float64Array;
  /** Mean peak of each curve, let go early, in the middle and late: three entries a curve. */
  readonly meanKpa: Float64Array;
  /** Scatter about those, one entry a curve. */
  readonly sdKpa: Float64Array;
  /** Mean overshoot of each curve, %. */
  readonly overshootPct: Float64Array;
}

/** Works out the mixture of a hold. */
export function peakMixture(posterior: HoldPosterior, holdPct: number): PeakMixture {
  const { shapes, weight, basePct, baseVariance, scatterVariance, jitterPct, settledKpa } = posterior;
  const count = weight.length;
  const meanKpa = new Float64Array(3 * count);
  const sdKpa = new Float64Array(count);
  const overshootPct = new Float64Array(count);
  const perPct = settledKpa / 100;
  for (let curve = 0; curve < count; curve += 1) {
    const { kneePct, slope, widthPct } = shapes[curve] ?? FLAT;
    const base = basePct[curve] ?? 0;
    const past = holdPct - kneePct;
    const aside = (jitterPct[curve] ?? 0) * LET_GO_PLACE;
    const early = base + riseAt(past - aside, slope, widthPct);
    const middle = base + riseAt(past, slope, widthPct);
    const late = base + riseAt(past + aside, slope, widthPct);
    const mean = EARLY_SHARE * (early + late) + MIDDLE_SHARE * middle;
    meanKpa[3 * curve] = settledKpa + perPct * early;
    meanKpa[3 * curve + 1] = settledKpa + perPct * middle;
    meanKpa[3 * curve + 2] = settledKpa + perPct * late;
    overshootPct[curve] = mean;
    const fromSettled = posterior.settledScatterKpa * (1 + mean / 100);
    const ofBase = posterior.isPeakFromDuty ? 0 : (baseVariance[curve] ?? 0);
    const variance = (scatterVariance[curve] ?? 0) + ofBase;
    sdKpa[curve] = Math.sqrt(fromSettled * fromSettled + perPct * perPct * variance);
  }
  return { weight, meanKpa, sdKpa, overshootPct };
}

const FLAT = { kneePct: Infinity, slope: 0, widthPct: 1 };

/** Chance that the peak of a further pull is over a level, kPa, if this curve is the car's. */
export function curveOver({ meanKpa, sdKpa }: PeakMixture, curve: number, levelKpa: number): number {
  const sd = sdKpa[curve] ?? 1;
  const row = 3 * curve;
  const early = normalShareBelow(((meanKpa[row] ?? 0) - levelKpa) / sd);
  const middle = normalShareBelow(((meanKpa[row + 1] ?? 0) - levelKpa) / sd);
  const late = normalShareBelow(((meanKpa[row + 2] ?? 0) - levelKpa) / sd);
  return EARLY_SHARE * (early + late) + MIDDLE_SHARE * middle;
}

/** Chance that the peak of a further pull is over a level, kPa, over the whole belief. */
export function mixtureOver(mixture: PeakMixture, levelKpa: number): number {
  let over = 0;
  for (let curve = 0; curve < mixture.weight.length; curve += 1)
    over += (mixture.weight[curve] ?? 0) * curveOver(mixture, curve, levelKpa);
  return over;
}

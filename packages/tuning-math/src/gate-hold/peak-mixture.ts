import { normalShareBelow } from '../duty/normal-table.js';
import { LET_GO_PLACES, riseAt } from './curve-family.js';
import type { HoldPosterior } from './overshoot-posterior.js';

/** The peak of a further pull at a hold: five normals for each curve of the belief. */
export interface PeakMixture {
  /** Share of each curve. */
  readonly weight: Float64Array;
  /** Mean peak of each curve, at each place of letting go: as many entries a curve as places. */
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
  const meanKpa = new Float64Array(PLACES * count);
  const sdKpa = new Float64Array(count);
  const overshootPct = new Float64Array(count);
  const perPct = settledKpa / 100;
  for (let curve = 0; curve < count; curve += 1) {
    const { kneePct, slope, widthPct } = shapes[curve] ?? FLAT;
    const base = basePct[curve] ?? 0;
    const past = holdPct - kneePct;
    let sum = 0;
    for (let place = 0; place < PLACES; place += 1) {
      const aside = (LET_GO_PLACES[place] ?? 0) * (jitterPct[curve] ?? 0);
      const overshoot = base + riseAt(past + aside, slope, widthPct);
      sum += overshoot;
      meanKpa[PLACES * curve + place] = settledKpa + perPct * overshoot;
    }
    const mean = sum / PLACES;
    overshootPct[curve] = mean;
    const fromSettled = posterior.settledScatterKpa * (1 + mean / 100);
    const ofBase = posterior.isPeakFromDuty ? 0 : (baseVariance[curve] ?? 0);
    const variance = (scatterVariance[curve] ?? 0) + ofBase;
    sdKpa[curve] = Math.sqrt(fromSettled * fromSettled + perPct * perPct * variance);
  }
  return { weight, meanKpa, sdKpa, overshootPct };
}

const PLACES = LET_GO_PLACES.length;
const FLAT = { kneePct: Infinity, slope: 0, widthPct: 1 };

/** Chance that the peak of a further pull is over a level, kPa, if this curve is the car's. */
export function curveOver({ meanKpa, sdKpa }: PeakMixture, curve: number, levelKpa: number): number {
  const sd = sdKpa[curve] ?? 1;
  let over = 0;
  for (let entry = PLACES * curve; entry < PLACES * (curve + 1); entry += 1)
    over += normalShareBelow(((meanKpa[entry] ?? 0) - levelKpa) / sd);
  return over / PLACES;
}

/** Chance that the peak of a further pull is over a level, kPa, over the whole belief. */
export function mixtureOver(mixture: PeakMixture, levelKpa: number): number {
  let over = 0;
  for (let curve = 0; curve < mixture.weight.length; curve += 1)
    over += (mixture.weight[curve] ?? 0) * curveOver(mixture, curve, levelKpa);
  return over;
}

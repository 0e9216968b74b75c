import { drawBetween, drawNormal, drawOne, seededRandom } from '@pullbook/practice-car';
import type { HoldPull } from '@pullbook/tuning-math';

/** A car whose overshoot against gate hold is known. */
export interface HoldCar {
  readonly goal: {
    readonly targetKpa: number;
    readonly toleranceKpa: number;
    readonly ceilingKpa: number;
    readonly overshootLimitPct: number;
  };
  /** Gate hold that the duty was found with. */
  readonly startHoldPct: number;
  readonly meanOvershootPct: (holdPct: number) => number;
  readonly settledKpa: number;
  /** The pull of that number at a hold; the same luck whatever the hold. */
  readonly pull: (index: number, holdPct: number) => HoldPull;
}

const KINDS = ['soft knee', 'straight', 'square', 'jump'] as const;

function overshootCurve(seed: number, basePct: number): (holdPct: number) => number {
  const random = seededRandom(seed);
  const knee = drawBetween(random, 42, 104);
  const slope = drawBetween(random, 0.12, 1.2);
  const width = drawBetween(random, 1, 8);
  const jump = drawBetween(random, 2, 9);
  const kind = drawOne(random, KINDS);
  return (holdPct) => {
    const past = Math.max(0, holdPct - knee);
    if (kind === 'soft knee') return basePct + slope * width * Math.log1p(Math.exp((holdPct - knee) / width));
    if (kind === 'straight') return basePct + slope * past;
    if (kind === 'square') return basePct + (slope * past * past) / 14;
    return past > 0 ? basePct + jump + 0.3 * slope * past : basePct;
  };
}

/**
 * Draws one car for the gate-hold search: four kinds of curve, none of which the advice is told. Ceiling 8 to
 * 13 % above target, scatter of boost 0.6 to 1.5 %, of overshoot 0.3 to 0.9 points, more where there is more.
 */
export function drawHoldCar(seed: number): HoldCar {
  const random = seededRandom(seed * 31 + 5);
  const basePct = drawBetween(random, 0, 2.5);
  const meanOvershootPct = overshootCurve(seed * 31 + 6, basePct);
  const targetKpa = drawBetween(random, 80, 180);
  const boostScatter = drawBetween(random, 0.006, 0.015);
  const overshootScatter = drawBetween(random, 0.3, 0.9);
  const startHoldPct = 40;
  const peakKpa = targetKpa * (1 + 0.008 * drawNormal(random));
  const settledKpa = peakKpa / (1 + meanOvershootPct(startHoldPct) / 100);
  return {
    goal: {
      targetKpa,
      toleranceKpa: 0.03 * targetKpa,
      ceilingKpa: targetKpa * drawBetween(random, 1.08, 1.13),
      overshootLimitPct: 5,
    },
    startHoldPct,
    meanOvershootPct,
    settledKpa,
    pull: (index, holdPct) => {
      const luck = seededRandom(seed * 1009 + index);
      const settled = settledKpa * (1 + boostScatter * drawNormal(luck));
      const mean = meanOvershootPct(holdPct);
      const scatter = Math.hypot(overshootScatter, 0.1 * (mean - basePct));
      const overshoot = Math.max(0, mean + scatter * drawNormal(luck));
      return { holdPct, settledKpa: settled, peakKpa: settled * (1 + overshoot / 100) };
    },
  };
}

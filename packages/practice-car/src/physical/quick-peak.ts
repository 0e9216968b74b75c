import { drawNormal } from '../random/draw-normal.js';
import type { Random } from '../random/seeded-random.js';
import type { PhysicalCar } from './physical-car.js';
import type { PullOptions } from './pull-plan.js';
import { runPull } from './run-pull.js';
import { varyPull } from './vary-pull.js';

export interface QuickPeak {
  /** What the tuner reads off the gauge's peak memory and writes down. */
  readonly recordedPeakKpa: number;
  /** The pull's own peak, noise-free. */
  readonly peakKpa: number;
  readonly settledKpa: number;
  readonly overshootPct: number | null;
  readonly riseTimeS: number | null;
}

/** Accuracy of a gauge, one standard deviation, as a share of the reading, and its smallest step. */
const GAUGE_RATIO = 0.004;
const GAUGE_STEP_KPA = 1;

/**
 * The peak of one pull as a tuner would write it down: a pull that varies a little, read off a gauge.
 *
 * @param car the car
 * @param options duty and whatever differs from the defaults
 * @param random stream to draw from
 * @throws OutOfRangeError, NotFiniteError as `runPull`
 */
export function quickPeak(car: PhysicalCar, options: PullOptions, random: Random): QuickPeak {
  const pull = runPull(car, varyPull(options, random));
  const read = pull.peakKpa * (1 + GAUGE_RATIO * drawNormal(random));
  return {
    recordedPeakKpa: GAUGE_STEP_KPA * Math.round(read / GAUGE_STEP_KPA),
    peakKpa: pull.peakKpa,
    settledKpa: pull.settledKpa,
    overshootPct: pull.overshootPct,
    riseTimeS: pull.riseTimeS,
  };
}

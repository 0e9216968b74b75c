import { OutOfRangeError } from '@pullbook/tuning-math';
import { SHOWS_FROM } from '../faults/shows-from.js';
import { drawBetween } from '../random/draw-between.js';
import { drawNormal } from '../random/draw-normal.js';
import { seededRandom } from '../random/seeded-random.js';
import { DRAWN_RANGES } from './drawn-ranges.js';
import type { ShapeCar, ShapePull } from './shape-car.js';
import { soakAfter } from './soak-after.js';

/** A tuning session with one shape car: each pull heats it, and a fault may come. */
export interface ShapeDrive {
  /** Makes the next pull. Throws OutOfRangeError for a duty outside the controller's range. */
  readonly pull: (duty: number) => ShapePull;
  /** Mean peak at a duty as hot as the car was at its last pull, fault left out, kPa gauge. */
  readonly meanNowKpa: (duty: number) => number;
}

/**
 * Starts a tuning session with a cold car. The same car and the same pulls give the same peaks, and the scatter
 * of the n-th pull is the same whatever its duty, so that methods can be compared on like luck.
 */
export function driveShapeCar(car: ShapeCar): ShapeDrive {
  const { truth, controller } = car;
  let made = 0;
  return {
    pull: (duty) => {
      if (!(duty >= controller.dutyMin && duty <= controller.dutyMax)) {
        throw new OutOfRangeError('driveShapeCar', {
          argument: 'duty',
          value: duty,
          allowed: `from ${controller.dutyMin} to ${controller.dutyMax}`,
        });
      }
      const pulled = pullOnce(car, { duty, index: made, soak: soakAfter(truth, made) });
      made += 1;
      return pulled;
    },
    meanNowKpa: (duty) => truth.meanKpa(duty) * soakAfter(truth, made - 1),
  };
}

interface PullPlan {
  readonly duty: number;
  readonly index: number;
  readonly soak: number;
}

function pullOnce({ truth, seed }: ShapeCar, { duty, index, soak }: PullPlan): ShapePull {
  const random = seededRandom(seed * 1009 + index + 1);
  const healthyKpa = truth.meanKpa(duty) * soak;
  const faulty = truth.fault !== null && index >= truth.fault.fromPull;
  const trueMeanKpa = faulty && truth.fault ? truth.fault.meanKpa(healthyKpa) : healthyKpa;
  const scattered = trueMeanKpa * Math.max(1 + truth.scatterRatio * drawNormal(random), 0.2);
  const isFalse = random() < truth.falsePullShare;
  const loss = isFalse ? drawBetween(random, ...DRAWN_RANGES.falseLossRatio) : 0;
  return {
    duty,
    peakKpa: scattered * (1 - loss),
    trueMeanKpa,
    isFalse,
    showsFault: faulty && Math.abs(trueMeanKpa / healthyKpa - 1) > SHOWS_FROM,
  };
}

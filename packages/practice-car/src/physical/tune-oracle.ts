import { OutOfRangeError } from '@pullbook/tuning-math';
import type { PhysicalCar } from './physical-car.js';
import type { PullOptions } from './pull-plan.js';
import { runPull } from './run-pull.js';

export interface OracleAnswer {
  /** The duty whose peak is nearest the target. */
  readonly dutyPct: number;
  readonly peakKpa: number;
  /** Peaks at duty 0 and 100. */
  readonly lowestKpa: number;
  readonly highestKpa: number;
  readonly isReachable: boolean;
  readonly converged: boolean;
  readonly iterations: number;
}

const TOLERANCE_PCT = 0.02;
const MOST_ITERATIONS = 40;

/**
 * The duty that truly makes the target on this car under these conditions, found by running the model.
 *
 * Bisection on duty, which needs nothing but that more duty gives no less boost. A target under the floor or over the
 * car's power is answered with the nearest end and `isReachable` false.
 *
 * @param car the car
 * @param targetKpa wanted peak, above 0
 * @param options conditions that differ from the defaults
 * @throws OutOfRangeError for a target of 0 or less
 * Cost: about fifteen runs of `runPull`.
 */
export function tuneOracle(
  car: PhysicalCar,
  targetKpa: number,
  options: Partial<Omit<PullOptions, 'dutyPct'>> = {},
): OracleAnswer {
  if (!(targetKpa > 0))
    throw new OutOfRangeError('tuneOracle', { argument: 'targetKpa', value: targetKpa, allowed: 'above 0' });
  const peakAt = (dutyPct: number): number => runPull(car, { targetKpa, ...options, dutyPct }).peakKpa;
  const lowestKpa = peakAt(0);
  const highestKpa = peakAt(100);
  const ends = { lowestKpa, highestKpa, converged: true, iterations: 0 };
  if (targetKpa <= lowestKpa)
    return { ...ends, dutyPct: 0, peakKpa: lowestKpa, isReachable: targetKpa === lowestKpa };
  if (targetKpa >= highestKpa)
    return { ...ends, dutyPct: 100, peakKpa: highestKpa, isReachable: targetKpa === highestKpa };
  let low = 0;
  let high = 100;
  let iterations = 0;
  while (high - low > TOLERANCE_PCT && iterations < MOST_ITERATIONS) {
    const middle = (low + high) / 2;
    if (peakAt(middle) < targetKpa) low = middle;
    else high = middle;
    iterations += 1;
  }
  const dutyPct = (low + high) / 2;
  const converged = high - low <= TOLERANCE_PCT;
  return { ...ends, dutyPct, peakKpa: peakAt(dutyPct), isReachable: true, converged, iterations };
}

import { adviseDuty, type DutyAdviceRequest } from '@pullbook/tuning-math';
import { quantile } from './quantile.js';
import { requestOf, type TuningRun } from './tune-car.js';

/** Pulls on record in every request that is timed. */
export const PULLS_ON_RECORD = 20;
/** Each request is decided so many times. */
export const TIMES_DECIDED = 5;
/** Decisions before any is timed, so that the code is compiled as it is in a server that has run for a while. */
export const WARM_UPS = 150;
/** More requests would not make the figures surer. */
const MOST_REQUESTS = 200;

/** How long decisions take while nothing else runs. */
export interface TimeAlone {
  readonly requests: number;
  readonly decisions: number;
  readonly msP50: number;
  readonly msP95: number;
}

/**
 * Times the advice as the product meets it, one decision after the other on this thread: on the requests with twenty
 * pulls on record that came up in the runs. Every decision counts, not the fastest of several.
 */
export function timeAlone(runs: readonly TuningRun[]): TimeAlone {
  const requests = runs
    .filter(({ pulls }) => pulls.length >= PULLS_ON_RECORD)
    .slice(0, MOST_REQUESTS)
    .map(({ car, pulls }) => requestOf(car, pulls.slice(0, PULLS_ON_RECORD)));
  for (let warmUp = 0; warmUp < WARM_UPS && requests.length > 0; warmUp += 1)
    adviseDuty(requests[warmUp % requests.length] as DutyAdviceRequest);
  const times: number[] = [];
  for (let round = 0; round < TIMES_DECIDED; round += 1) {
    for (const request of requests) {
      const start = performance.now();
      adviseDuty(request);
      times.push(performance.now() - start);
    }
  }
  return {
    requests: requests.length,
    decisions: times.length,
    msP50: quantile(times, 0.5),
    msP95: quantile(times, 0.95),
  };
}

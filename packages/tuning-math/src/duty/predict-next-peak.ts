import { OutOfRangeError } from '../errors.js';
import { checkDutyRequest } from './check-duty-request.js';
import type { DutyAdviceRequest } from './duty-advice-types.js';
import { dutySituation } from './duty-situation.js';
import { peakQuantiles } from './peak-quantiles.js';
import { predictPeak } from './predict-peak.js';

/** Which quantiles of the next peak are asked for. */
export interface NextPeakQuestion {
  /** Duty of the next pull, %, inside the controller's range. */
  readonly duty: number;
  /** Shares of next peaks that lie below each answer, each inside (0, 1). */
  readonly shares: readonly number[];
}

/**
 * Quantiles of the peak of the next pull at any duty, by the same reckoning as `adviseDuty`: what shows whether
 * its predicted ranges hold the share of peaks that they promise. It gives no leave to pull that duty.
 *
 * @param request as for `adviseDuty`
 * @returns kPa gauge, one for each share
 * @throws {NotFiniteError} a number that is NaN or infinite
 * @throws {OutOfRangeError} a request that `adviseDuty` refuses, a duty outside the range, a share not inside (0, 1)
 * Cost: about that of `adviseDuty`. Source: see `responsePosterior`.
 */
export function predictNextPeak(request: DutyAdviceRequest, { duty, shares }: NextPeakQuestion): number[] {
  checkDutyRequest(request);
  const { dutyMin, dutyMax } = request.controller;
  if (!(duty >= dutyMin && duty <= dutyMax)) refuse('duty', duty, `from ${dutyMin} to ${dutyMax}`);
  shares.forEach((share, index) => {
    if (!(share > 0 && share < 1)) refuse(`shares[${index}]`, share, 'inside (0, 1)');
  });
  const mixture = predictPeak(dutySituation(request).posterior, duty);
  return peakQuantiles(mixture, shares).map((log) => request.goal.targetKpa * Math.exp(log));
}

function refuse(argument: string, value: number, allowed: string): never {
  throw new OutOfRangeError('predictNextPeak', { argument, value, allowed });
}

import { DRAWN_RANGES, soakAfter } from '@pullbook/practice-car';
import { normalCdf } from '@pullbook/tuning-math';
import type { CarGuess } from './car-guess.js';

const LEAST_DENSITY = 1e-12;
const [LEAST_LOSS, MOST_LOSS] = DRAWN_RANGES.falseLossRatio;

/**
 * Log density of a reading over its mean, if the car is as guessed: scatter about the mean, or a false pull that loses a
 * share drawn evenly.
 *
 * @param pullsBefore how many pulls have heated the car
 * Source: the mixture that `driveShapeCar` draws from; the loss is integrated over y = ratio / (1 - loss), with dy / y taken
 * as dy since y is within a few per cent of 1.
 */
export function readingLikelihood(
  guess: Pick<CarGuess, 'meanKpa' | 'scatterRatio' | 'falsePullShare' | 'soakShiftRatio' | 'soakPulls'>,
  { duty, peakKpa }: { readonly duty: number; readonly peakKpa: number },
  pullsBefore: number,
): number {
  const { scatterRatio: scatter, falsePullShare } = guess;
  const ratio = peakKpa / (guess.meanKpa(duty) * soakAfter(guess, pullsBefore));
  const away = (ratio - 1) / scatter;
  const usual = Math.exp(-0.5 * away * away) / (scatter * Math.sqrt(2 * Math.PI));
  const most = normalCdf((ratio / (1 - MOST_LOSS) - 1) / scatter);
  const least = normalCdf((ratio / (1 - LEAST_LOSS) - 1) / scatter);
  const lost = (most - least) / (MOST_LOSS - LEAST_LOSS);
  return Math.log((1 - falsePullShare) * usual + falsePullShare * lost + LEAST_DENSITY);
}

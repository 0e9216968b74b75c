import type { PeakMixture } from './peak-mixture.js';
import type { ScaledPulls } from './scaled-pulls.js';

/**
 * At each point of duty that was not pulled yet, boost may begin to rise as nothing below tells and no curve of the library
 * does: how often, and then how steeply, log per point. Settled on development cars.
 */
const BEGINS_PER_POINT = 0.002;
const SLOPE = 0.035;

/** What such a rise adds to the next pull at a duty. */
export interface SuddenRise {
  /** Chance that it takes the peak past the ceiling. */
  readonly chance: number;
  /** How far the peak is expected to pass the ceiling by it, log. */
  readonly excess: number;
}

const NONE: SuddenRise = { chance: 0, excess: 0 };

/** What is asked: the next pull at a duty, what is expected there without it, and the ceiling, log over target. */
export interface SuddenRiseQuestion {
  readonly duty: number;
  readonly mixture: PeakMixture;
  readonly ceiling: number;
}

/**
 * Reckons with a rise that begins anywhere between the highest pulled duty and this one, each point as likely.
 *
 * Source: a constant hazard, integrated over where it begins; the figures are common practice, no source.
 */
export function suddenRise(
  pulls: Pick<ScaledPulls, 'count' | 'duties'>,
  { duty, mixture, ceiling }: SuddenRiseQuestion,
): SuddenRise {
  if (pulls.count === 0) return NONE;
  const highest = pulls.duties.reduce((most, pulled) => Math.max(most, pulled), 0);
  if (duty <= highest) return NONE;
  const room = Math.max(ceiling - meanOf(mixture), 0);
  const passing = duty - highest - room / SLOPE;
  if (passing <= 0) return NONE;
  return { chance: BEGINS_PER_POINT * passing, excess: 0.5 * BEGINS_PER_POINT * SLOPE * passing ** 2 };
}

function meanOf({ weights, centres }: PeakMixture): number {
  let mean = 0;
  for (let row = 0; row < weights.length; row += 1)
    mean += (weights[row] as number) * (centres[row] as number);
  return mean;
}

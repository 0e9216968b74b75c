import type { DutyAdvice, StripFigures } from '@pullbook/contracts';
import type { PresetValues } from './preset-values.js';

/** A pull as the peak strip marks it. */
interface StripPull {
  readonly number: number;
  readonly peakKpa: number;
  readonly isVoid: boolean;
}

/**
 * All that the peak strip of a preset shows.
 *
 * @param pulls those of one visit, voided and unusable ones too
 * @param advice where there is one: its predicted range is drawn as the next pull
 */
export function stripFigures(
  values: Pick<PresetValues, 'targetKpa' | 'toleranceKpa' | 'ceilingKpa'>,
  baseKpa: number | null,
  pulls: readonly StripPull[],
  advice: DutyAdvice | null,
): StripFigures {
  const { targetKpa, toleranceKpa, ceilingKpa } = values;
  const isPullNext = advice !== null && (advice.action === 'pull' || advice.action === 'repeat');
  const prediction = isPullNext ? advice.prediction : null;
  return {
    baseKpa,
    targetKpa,
    toleranceKpa,
    ceilingKpa,
    pulls: pulls.map(({ number, peakKpa, isVoid }) => ({ number, peakKpa, isVoid })),
    next: prediction && { lowKpa: prediction.lowKpa, highKpa: prediction.highKpa },
  };
}

import type { DutyAdvice, StripFigures } from '@pullbook/contracts';

/** The range in which the next pull's peak is expected, kPa gauge; null where the advice asks for no pull. */
export function nextRange(advice: DutyAdvice | null): StripFigures['next'] {
  const isGoing = advice?.action === 'pull' || advice?.action === 'repeat';
  if (!isGoing || advice.prediction === null) return null;
  return { lowKpa: advice.prediction.lowKpa, highKpa: advice.prediction.highKpa };
}

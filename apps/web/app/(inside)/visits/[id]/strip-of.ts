import type { Car, DutyAdvice, Preset, Pull, StripFigures } from '@pullbook/contracts';

interface StripSources {
  readonly preset: Preset;
  readonly car: Car;
  readonly pulls: readonly Pull[];
  readonly advice: DutyAdvice | null;
}

/** What the peak strip of a preset on test shows. */
export function stripOf({ preset, car, pulls, advice }: StripSources): StripFigures {
  const isGoing = advice?.action === 'pull' || advice?.action === 'repeat';
  const prediction = isGoing ? advice.prediction : null;
  return {
    baseKpa: car.mechanics.actuatorSpringKpa,
    targetKpa: preset.targetKpa,
    toleranceKpa: preset.toleranceKpa,
    ceilingKpa: preset.ceilingKpa,
    pulls: pulls.map((pull) => ({
      number: pull.number,
      peakKpa: pull.peakKpa,
      isVoid: pull.voidedAt !== null || !pull.usable,
    })),
    next: prediction === null ? null : { lowKpa: prediction.lowKpa, highKpa: prediction.highKpa },
  };
}

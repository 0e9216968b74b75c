import type { Car, DutyAdvice, Preset, Pull, StripFigures } from '@pullbook/contracts';
import { nextRange } from '../../../../components/pictures/next-range';

interface StripSources {
  readonly preset: Preset;
  readonly car: Car;
  readonly pulls: readonly Pull[];
  readonly advice: DutyAdvice | null;
}

/** What the peak strip of a preset on test shows. */
export function stripOf({ preset, car, pulls, advice }: StripSources): StripFigures {
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
    next: nextRange(advice),
  };
}

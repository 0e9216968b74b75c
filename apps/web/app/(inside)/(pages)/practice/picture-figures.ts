import type { DutyAdvice, StripFigures } from '@pullbook/contracts';
import type { ChartFigures } from '@pullbook/pictures';
import type { PracticeSheet, PracticeTruth } from '@pullbook/practice-car';
import { nextRange } from '../../../../components/pictures/next-range';
import type { TakenPull } from '../../../../practice/practice-question';
import { isUsable } from './practice';

/** What the peak strip of a practice shows; the next pull's range only with the advice. */
export function stripFigures(
  { goal, baseKpa }: PracticeSheet,
  pulls: readonly TakenPull[],
  advice: DutyAdvice | null,
): StripFigures {
  return {
    baseKpa,
    ...goal,
    pulls: pulls.map((pull, index) => ({
      number: index + 1,
      peakKpa: pull.recordedPeakKpa,
      isVoid: !isUsable(pull),
    })),
    next: nextRange(advice),
  };
}

/** What the response chart of a practice shows; the book's curve only with the advice. */
export function chartFigures(
  { goal, baseKpa, controller }: PracticeSheet,
  pulls: readonly TakenPull[],
  advice: DutyAdvice | null,
): ChartFigures {
  const range = nextRange(advice);
  const duty = advice?.duty ?? null;
  return {
    dutyRange: { min: controller.dutyMin, max: controller.dutyMax },
    baseKpa,
    ...goal,
    pulls: pulls.map((pull, index) => ({
      number: index + 1,
      dutyPct: pull.duty,
      peakKpa: pull.recordedPeakKpa,
      isVoid: !isUsable(pull),
    })),
    curve: advice?.curve ?? [],
    next: range === null || duty === null ? null : { dutyPct: duty, ...range },
  };
}

/** The pulls over the curve that the car truly had. */
export function truthFigures(
  sheet: PracticeSheet,
  pulls: readonly TakenPull[],
  { curve }: PracticeTruth,
): ChartFigures {
  return {
    ...chartFigures(sheet, pulls, null),
    curve: curve.map(({ duty, meanKpa }) => ({
      duty,
      medianKpa: meanKpa,
      lowKpa: meanKpa,
      highKpa: meanKpa,
    })),
    curveIs: 'true',
  };
}

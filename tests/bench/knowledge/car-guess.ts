import {
  BASE_READING_SPREAD,
  DRAWN_RANGES,
  STARTS_BELOW,
  TARGET_ABOVE_MIN,
  TARGET_BELOW_MAX,
  TARGET_GAINS,
  type DrawnRange,
  type MeanPeakKpa,
  type RiseDraw,
  type ShapeTruth,
} from '@pullbook/practice-car';
import type { DutyAdviceRequest } from '@pullbook/tuning-math';

/** The most numbers that a formula asks for. */
const RISE_NUMBERS = 16;
/** Then those of the target's duty, scatter, heat soak (two) and false pulls. */
const TARGET_AT = RISE_NUMBERS;
const [SCATTER, SHIFT, SOAK, FALSE_SHARE] = [17, 18, 19, 20];
/** Numbers that make one guess, each from 0 to 1. */
export const GUESS_NUMBERS = 21;
/** The first of those that say nothing of the response. */
export const FIRST_NUISANCE = SCATTER;

/** What is known of a car before its first pull. */
export type KnownCar = Pick<DutyAdviceRequest, 'controller' | 'goal' | 'baseKpa'>;

/** A car as it might be. */
export interface CarGuess extends Omit<ShapeTruth, 'fault'> {
  /** What it is drawn from: the numbers that the formula takes as random ones, and the others. */
  readonly numbers: Float64Array;
  readonly meanKpa: MeanPeakKpa;
  /** Log density of the known target and base boost, given the numbers. */
  readonly logPrior: number;
}

/**
 * The car that a formula and some numbers make, as `drawShapeCar` would make it, given its target: the duty of the target
 * is drawn, and the base boost follows from it. Null where no such car is drawn.
 *
 * @throws {RangeError} a formula that asks for more than 16 numbers
 * Source: change of variables (base, duty of the target) to (target, duty of the target): the density is divided by
 * the gain; textbook.
 */
export function carGuess(known: KnownCar, rise: RiseDraw, numbers: Float64Array): CarGuess | null {
  const { controller, goal, baseKpa: readBaseKpa } = known;
  const ratioAt = rise(replayed(numbers), 1);
  const range = [controller.dutyMin + TARGET_ABOVE_MIN, controller.dutyMax - TARGET_BELOW_MAX] as const;
  const gain = ratioAt(at(numbers, TARGET_AT, range));
  const baseKpa = goal.targetKpa / gain;
  const [leastBase, mostBase] = DRAWN_RANGES.baseKpa;
  if (baseKpa < leastBase || baseKpa > mostBase) return null;
  if (gain < TARGET_GAINS[0] || gain > TARGET_GAINS[1]) return null;
  if (baseKpa * ratioAt(0) >= STARTS_BELOW * goal.targetKpa) return null;
  const off =
    readBaseKpa === null || readBaseKpa === undefined ? 0 : (readBaseKpa / baseKpa - 1) / BASE_READING_SPREAD;
  return {
    numbers,
    meanKpa: (duty) => baseKpa * ratioAt(duty),
    scatterRatio: at(numbers, SCATTER, DRAWN_RANGES.scatterRatio),
    soakShiftRatio: at(numbers, SHIFT, DRAWN_RANGES.soakShiftRatio),
    soakPulls: at(numbers, SOAK, DRAWN_RANGES.soakPulls),
    falsePullShare: at(numbers, FALSE_SHARE, DRAWN_RANGES.falsePullShare),
    logPrior: -Math.log(gain) - 0.5 * off * off,
  };
}

function at(numbers: Float64Array, index: number, [low, high]: DrawnRange): number {
  return low + (high - low) * (numbers[index] as number);
}

/** The numbers as a stream of random ones. */
function replayed(numbers: Float64Array): () => number {
  let taken = 0;
  return () => {
    if (taken === RISE_NUMBERS) throw new RangeError(`a formula asks for more than ${RISE_NUMBERS} numbers`);
    taken += 1;
    return numbers[taken - 1] as number;
  };
}

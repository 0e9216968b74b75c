import { SHOWS_FROM } from '../faults/shows-from.js';
import { lowestGoodDuty } from './good-duty.js';
import type { PracticeCar, PracticeFaultName, PracticePull } from './practice-car.js';

/** All that a practice car hid. Pressures in kPa gauge, duties in %. */
export interface PracticeTruth {
  /** Mean peak of the cold and sound car over its duty range. */
  readonly curve: readonly { readonly duty: number; readonly meanKpa: number }[];
  /** Lowest duty whose mean is inside the tolerance; null where none is. */
  readonly goodDuty: number | null;
  /** Pulls of one who knows the curve and keeps the step rule, one to confirm among them; null without a good duty. */
  readonly fewestPulls: number | null;
  readonly fault: {
    readonly name: PracticeFaultName;
    /** Number of the first pull that it could touch, whether that was made or not. */
    readonly fromPull: number;
    /** Number of the first pull that it moved by more than 3 %; null where none was. */
    readonly seenAtPull: number | null;
  } | null;
  /** True mean at the accepted duty as the car was at the end, its fault included; null where none was accepted. */
  readonly acceptedMeanKpa: number | null;
}

export interface PracticeEnd {
  readonly pulls: readonly PracticePull[];
  readonly acceptedDuty: number | null;
  readonly stepLimit: number;
}

const POINTS = 21;

/**
 * Tells what a practice car was, once the practising is over.
 *
 * @param onProgress called with the share done, 0 to 1
 * @returns the truth; the curve has 21 points, between which the good duty is interpolated
 * Cost: about 25 runs of `runPull` for a physical car.
 */
export function tellPracticeTruth(
  car: PracticeCar,
  { pulls, acceptedDuty, stepLimit }: PracticeEnd,
  onProgress: (share: number) => void = () => undefined,
): PracticeTruth {
  const { controller, goal } = car.sheet;
  const { dutyMin, dutyMax } = controller;
  const curve = Array.from({ length: POINTS }, (_, index) => {
    onProgress(index / POINTS);
    const duty = dutyMin + ((dutyMax - dutyMin) * index) / (POINTS - 1);
    return { duty, meanKpa: car.soundMeanKpa(duty, 0) };
  });
  const goodDuty = lowestGoodDuty((duty) => between(curve, duty), controller, goal);
  const firstDuty = pulls[0]?.duty ?? dutyMin;
  const seenIndex = pulls.findIndex(({ showsFault }) => showsFault);
  return {
    curve,
    goodDuty,
    fewestPulls: goodDuty === null ? null : Math.max(Math.ceil((goodDuty - firstDuty) / stepLimit), 0) + 1,
    fault: car.fault && { ...car.fault, seenAtPull: seenIndex < 0 ? null : seenIndex + 1 },
    acceptedMeanKpa: acceptedDuty === null ? null : meanAtEnd(car, pulls, acceptedDuty),
  };
}

/** Mean of the peaks that a duty would go on making: that of the next pull, fault included. */
function meanAtEnd(car: PracticeCar, pulls: readonly PracticePull[], duty: number): number {
  const soundKpa = car.soundMeanKpa(duty, pulls.length);
  const isFailing = car.fault !== null && pulls.length >= car.fault.fromPull;
  if (!isFailing) return soundKpa;
  const { trueMeanKpa } = car.pullAfter([...pulls.slice(1).map((pull) => pull.duty), duty]);
  return Math.abs(trueMeanKpa / soundKpa - 1) > SHOWS_FROM ? trueMeanKpa : soundKpa;
}

function between(curve: PracticeTruth['curve'], duty: number): number {
  const after = curve.findIndex((point) => point.duty >= duty);
  const right = curve[after] ?? curve.at(-1);
  const left = curve[Math.max(after - 1, 0)];
  if (left === undefined || right === undefined) throw new Error('between: the curve has no points');
  if (right.duty === left.duty) return right.meanKpa;
  return left.meanKpa + ((right.meanKpa - left.meanKpa) * (duty - left.duty)) / (right.duty - left.duty);
}

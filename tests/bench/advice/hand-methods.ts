import type { DutyAdviceRequest, DutyPull } from '@pullbook/tuning-math';
import { ODD_READING, type Method } from './tune-car.js';

type Proposal = (request: DutyAdviceRequest, sorted: readonly DutyPull[]) => number;

/** What people do by hand: go up by a ladder, halve back from a peak that is too high, take the first good reading. */
export const HAND_METHODS: readonly { readonly name: string; readonly method: Method }[] = [
  { name: 'ladder of 10', method: byHand(ladder(10), 10) },
  { name: 'ladder of 5', method: byHand(ladder(5), 5) },
  { name: 'ladder of 10, then interpolation', method: byHand(interpolation, 10) },
  { name: 'secant', method: byHand(secant, 10) },
];

/** The rules that hand methods share: accept the first reading inside, stop at the ends and at odd signs. */
function byHand(propose: Proposal, firstStep: number): Method {
  return (request) => {
    const { controller, goal, pulls } = request;
    const last = pulls[pulls.length - 1];
    if (!last) return { action: 'pull', duty: onGrid(request, controller.dutyMin + firstStep) };
    if (Math.abs(last.peakKpa - goal.targetKpa) <= goal.toleranceKpa)
      return { action: 'accept', duty: last.duty };
    if (isAtAnEnd(request, last)) return { action: 'stop', duty: null };
    if (isOdd(request, last)) return { action: 'stop', duty: null, code: ODD_READING };
    const sorted = [...pulls].sort((one, other) => one.duty - other.duty || one.peakKpa - other.peakKpa);
    const highest = Math.max(...pulls.map(({ duty }) => duty));
    const wanted = Math.min(propose(request, sorted), highest + 10);
    return { action: 'pull', duty: onGrid(request, wanted) };
  };
}

/** At an end of the range and still off. */
function isAtAnEnd({ controller, goal }: DutyAdviceRequest, last: DutyPull): boolean {
  const short = last.peakKpa < goal.targetKpa;
  return short ? last.duty >= controller.dutyMax : last.duty <= controller.dutyMin;
}

/** Far past the ceiling, or twice running well below an earlier pull at less duty, since the car was last found sound. */
function isOdd({ goal, pulls, soundPulls = 0 }: DutyAdviceRequest, last: DutyPull): boolean {
  if (soundPulls === pulls.length) return false;
  if (last.peakKpa > 1.15 * goal.ceilingKpa) return true;
  const isFallen = (pull: DutyPull): boolean =>
    pulls.some((earlier) => earlier.duty <= pull.duty && earlier.peakKpa > 1.08 * pull.peakKpa);
  return pulls.length - soundPulls >= 2 && pulls.length > 2 && pulls.slice(-2).every(isFallen);
}

function ladder(step: number): Proposal {
  return (request, sorted) => {
    const { below, above } = bracket(request, sorted);
    if (above === undefined) return (below?.duty ?? request.controller.dutyMin) + step;
    return ((below?.duty ?? request.controller.dutyMin) + above.duty) / 2;
  };
}

function interpolation(request: DutyAdviceRequest, sorted: readonly DutyPull[]): number {
  const { below, above } = bracket(request, sorted);
  if (above === undefined) return (below?.duty ?? request.controller.dutyMin) + 10;
  const from = below ?? { duty: request.controller.dutyMin, peakKpa: above.peakKpa / 2 };
  return crossing(from, above, request.goal.targetKpa);
}

function secant(request: DutyAdviceRequest): number {
  const [one, other] = request.pulls.slice(-2);
  if (!one || !other) return (one?.duty ?? 0) + 10;
  if (other.peakKpa === one.peakKpa || other.duty === one.duty) return other.duty + 10;
  const duty = crossing(one, other, request.goal.targetKpa);
  return Number.isFinite(duty) ? duty : other.duty + 10;
}

function crossing(from: DutyPull, to: DutyPull, targetKpa: number): number {
  return from.duty + ((to.duty - from.duty) * (targetKpa - from.peakKpa)) / (to.peakKpa - from.peakKpa);
}

interface Bracket {
  /** Highest duty that read below the target, and lowest duty above that which read above it. */
  readonly below: DutyPull | undefined;
  readonly above: DutyPull | undefined;
}

function bracket({ goal }: DutyAdviceRequest, sorted: readonly DutyPull[]): Bracket {
  const above = sorted.find(({ peakKpa }) => peakKpa > goal.targetKpa);
  const under = sorted.filter((pull) => pull.peakKpa < goal.targetKpa && (!above || pull.duty < above.duty));
  return { below: under[under.length - 1], above };
}

/** Nearest setting that was not pulled before, if there is one within three settings; else the nearest. */
function onGrid({ controller, pulls }: DutyAdviceRequest, duty: number): number {
  const { dutyMin, dutyMax, dutyStep } = controller;
  const settings = Math.round((dutyMax - dutyMin) / dutyStep);
  const nearest = Math.min(Math.max(Math.round((duty - dutyMin) / dutyStep), 0), settings);
  for (const away of [0, -1, 1, -2, 2, -3, 3]) {
    const setting = nearest + away;
    const value = dutyMin + setting * dutyStep;
    if (setting < 0 || setting > settings || value > duty + 10) continue;
    if (!pulls.some((pull) => Math.abs(pull.duty - value) < 1e-6)) return value;
  }
  return dutyMin + nearest * dutyStep;
}

import { amount, sentence, type Amount, type Sentence } from '../sentences/index.js';
import type { DutyReason, DutyReasonCode, PeakPrediction } from './duty-advice-types.js';
import type { DutyDecision } from './decide-duty.js';
import type { DutySituation } from './duty-situation.js';

/** Figures that the sentences need. */
export interface ReasonFigures {
  readonly situation: DutySituation;
  readonly decision: DutyDecision;
  readonly prediction: PeakPrediction | null;
  readonly inside: number | null;
  readonly provedBy: readonly number[];
}

type Say = (words: Words) => Sentence;

/** One sentence or two for each code, with the numbers of this request. */
const SENTENCES: Record<DutyReasonCode, Say> = {
  'first-pull': (w) =>
    sentence`First pull: start low at ${w.duty} duty, at most ${w.step} above the controller's minimum.`,
  'measure-base': (w) =>
    sentence`First pull: ${w.isBaseKnown ? 'measure' : 'the base boost of this car is not known, so measure it at'} the lowest duty, ${w.duty}. Nothing less can be asked of the car, but its chance of passing the ceiling of ${w.ceiling} is above the limit of ${w.risk}: be ready to lift.`,
  'step-limit': (w) =>
    sentence`${w.duty} is the largest step allowed (${w.step} above ${w.highest}, the highest duty pulled so far).`,
  'ceiling-risk': (w) =>
    sentence`A shorter step, to ${w.duty}: with more, the risk of passing the ceiling of ${w.ceiling} would grow faster than the way gets shorter (never above ${w.risk} in a pull).`,
  'aim-at-target': (w) =>
    sentence`${w.duty} is the duty most likely to make ${w.target} within ${w.tolerance}.`,
  'back-down': (w) =>
    sentence`The last pull made ${w.last} at ${w.lastDuty}: go back to ${w.duty}, which is more likely to make ${w.target}.`,
  confirm: (w) =>
    sentence`${w.duty} looks right for ${w.target}, but only with a confidence of ${w.inside}: one more pull confirms it or shows otherwise.`,
  'low-reading-in-doubt': (w) =>
    sentence`The last pull made only ${w.last} at ${w.lastDuty}, less than the pulls before it lead one to expect. Repeat before raising duty: a false low reading would hide how near the ceiling is.`,
  'high-reading-in-doubt': (w) =>
    sentence`The last pull made ${w.last} at ${w.lastDuty}, more than the pulls before it lead one to expect. Repeat before raising duty.`,
  'learn-scatter': (w) =>
    sentence`With more than ${w.duty}, the risk of passing the ceiling of ${w.ceiling} would grow faster than the way gets shorter (never above ${w.risk} in a pull). Pull ${w.duty} again to learn how far its peaks scatter (${w.scatter} so far).`,
  'inside-tolerance': (w) =>
    sentence`${w.duty} makes ${w.target} within ${w.tolerance} with a confidence of ${w.inside}, proved by ${w.proof}.`,
  'target-out-of-reach': (w) =>
    sentence`Even full duty (${w.dutyMax}) does not make ${w.lowEdge} on this car. Highest so far: ${w.best}. Lower the target or look for what holds boost back.`,
  'floor-over-target': (w) =>
    sentence`Even the lowest duty (${w.dutyMin}) makes more than ${w.highEdge}. A softer spring, a larger gate, or a higher target is needed; duty cannot lower boost further.`,
  'peak-soared': (w) =>
    sentence`The last pull soared to ${w.last} at ${w.lastDuty}, far above what the pulls before it lead one to expect (ceiling ${w.ceiling}). Stop and look for a hose off the actuator, a sticking gate or a solenoid that does not close.`,
  'ceiling-passed-again': (w) =>
    sentence`The ceiling of ${w.ceiling} was passed again (${w.last} at ${w.lastDuty}). Stop and find out why peaks do not follow duty.`,
  'response-lost': (w) =>
    sentence`The last pulls made far less boost than the pulls before them lead one to expect (${w.last} at ${w.lastDuty}). Stop and look for a leak, a hose off, or a gate that no longer shuts.`,
  'no-safe-duty': (w) =>
    sentence`No duty keeps the chance of passing the ceiling of ${w.ceiling} to the limit of ${w.risk}, by what is known of this car. Stop: lower base boost or set a higher ceiling that the car stands.`,
  'no-duty-in-tolerance': (w) =>
    sentence`${w.pulls} pulls have not found a duty that makes ${w.target} within ${w.tolerance}. Stop: the response may fall between two settings, or drift.`,
  'scatter-too-wide': (w) =>
    sentence`Peaks scatter by ${w.scatter} from pull to pull, too much for a tolerance of ${w.tolerance} to be proved. Find the cause of the scatter or widen the tolerance.`,
  'heat-soak': () =>
    sentence`The car is soaking with heat, which may move its peaks by up to 4 %; the range allows for it. Prove the preset with a hot pull too.`,
  'found-sound': (w) =>
    sentence`The car was looked over and found sound: no fault is read into ${w.soundPulls}.`,
  'expected-range': (w) => sentence`Expect ${w.range}.`,
  'earlier-cars': (w) =>
    w.follows
      ? sentence`Leans on ${w.earlierCars} of this build (chance that this one follows: ${w.followsPct}). Step and ceiling limits stand as without.`
      : sentence`${w.earlierCars} of this build answered otherwise than this one: the advice rests on this car's own pulls.`,
};

/** The reason that decided, then what adds to it. */
export function dutyReasons(figures: ReasonFigures): DutyReason[] {
  const words = wordsOf(figures);
  const { action, code } = figures.decision;
  const codes: DutyReasonCode[] = [code];
  if (action === 'pull' || action === 'repeat') codes.push('expected-range');
  if (action !== 'stop' && figures.situation.pulls.nextHeat > 0.5) codes.push('heat-soak');
  if (action !== 'stop' && figures.situation.request.soundPulls) codes.push('found-sound');
  if (action !== 'stop' && figures.situation.lean) codes.push('earlier-cars');
  return codes.map((code) => ({ code, ...SENTENCES[code](words) }));
}

type Words = ReturnType<typeof requestWords> & ReturnType<typeof foundWords>;

function wordsOf(figures: ReasonFigures): Words {
  return { ...requestWords(figures.situation), ...foundWords(figures) };
}

/** Below this chance of being one of them, a car is said to answer otherwise than the earlier ones. */
const FOLLOWS_FROM = 0.5;

function requestWords({ request, riskLimit, stepLimit, posterior, lean }: DutySituation) {
  const { targetKpa, toleranceKpa, ceilingKpa } = request.goal;
  const last = request.pulls[request.pulls.length - 1];
  return {
    target: kpa(targetKpa),
    tolerance: kpa(toleranceKpa),
    ceiling: kpa(ceilingKpa),
    lowEdge: kpa(targetKpa - toleranceKpa),
    highEdge: kpa(targetKpa + toleranceKpa),
    dutyMin: setting(request.controller.dutyMin),
    dutyMax: setting(request.controller.dutyMax),
    step: amount(stepLimit, 'points'),
    risk: percent(100 * riskLimit),
    highest: setting(Math.max(request.controller.dutyMin, ...request.pulls.map(({ duty }) => duty))),
    best: kpa(Math.max(0, ...request.pulls.map(({ peakKpa }) => peakKpa))),
    last: last ? kpa(last.peakKpa) : '',
    lastDuty: last ? setting(last.duty) : '',
    pulls: String(request.pulls.length),
    isBaseKnown: (request.baseKpa ?? null) !== null,
    soundPulls:
      request.soundPulls === 1 ? 'its first usable pull' : `its first ${request.soundPulls} usable pulls`,
    scatter: percent(100 * posterior.scatter),
    ...leanWords(lean),
  };
}

function leanWords(lean: DutySituation['lean']) {
  const { carCount, share } = lean ?? { carCount: 0, share: 0 };
  return {
    follows: share >= FOLLOWS_FROM,
    followsPct: percent(Math.floor(100 * share)),
    earlierCars: carCount === 1 ? '1 earlier car' : `${carCount} earlier cars`,
  };
}

function foundWords({ decision, prediction, inside, provedBy }: ReasonFigures) {
  return {
    duty: decision.duty === null ? '' : setting(decision.duty),
    inside: inside === null ? '' : percent(Math.floor(1000 * inside) / 10),
    range: prediction ? { ...kpa(prediction.lowKpa), to: kpa(prediction.highKpa).value } : '',
    proof: `${provedBy.length === 1 ? 'pull' : 'pulls'} ${provedBy.map((index) => index + 1).join(', ')}`,
  };
}

const kpa = (value: number): Amount => amount(value, 'kPa');
const percent = (value: number): Amount => amount(value, '%');
/** A duty, as fine as controllers are set. */
const setting = (value: number): Amount => amount(value, '%', 2);

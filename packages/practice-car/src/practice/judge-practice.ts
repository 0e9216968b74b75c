import type { PracticePull, PracticeSheet } from './practice-car.js';
import type { PracticeTruth } from './tell-practice-truth.js';

/** How a practice came to its end. */
export type PracticeEnding =
  | { readonly kind: 'accept'; readonly duty: number }
  | { readonly kind: 'stop'; readonly because: 'fault' | 'out-of-reach' }
  | { readonly kind: 'ceiling' };

/** One thing to say afterwards: what went well, or what to mind. Pull numbers count from 1. */
export interface PracticeFinding {
  readonly kind: 'well' | 'mind';
  readonly code: FindingCode;
  readonly pulls: readonly number[];
}

export type FindingCode =
  | 'accepted-true'
  | 'accepted-off'
  | 'accepted-on-fault'
  | 'stopped-at-fault'
  | 'stopped-late'
  | 'stopped-sound'
  | 'stopped-unreachable'
  | 'stopped-wrong-reason'
  | 'ceiling-by-fault'
  | 'ceiling-passed'
  | 'ceiling-kept'
  | 'steps-kept'
  | 'steps-over'
  | 'confirmed'
  | 'confirmed-too-little'
  | 'few-pulls'
  | 'many-pulls'
  | 'false-set-aside'
  | 'false-kept'
  | 'true-set-aside';

export interface PracticeRun {
  readonly sheet: PracticeSheet;
  readonly pulls: readonly (PracticePull & { readonly isSetAside: boolean })[];
  readonly ending: PracticeEnding;
  readonly truth: PracticeTruth;
  readonly stepLimit: number;
  /** Usable pulls at the accepted duty that a workshop asks for. */
  readonly requiredPulls: number;
}

type Judge = (run: PracticeRun) => PracticeFinding | null;

/**
 * Pulls over the fewest possible that count as few: who follows the advice is not to be blamed for its care, and that needs
 * some five over them (docs/bench/advice.md), more on cars that scatter.
 */
const SPARE_PULLS = 7;
/** Pulls after the one that first shows a fault within which a stop is in time. */
const IN_TIME_PULLS = 1;
const STEP_SLACK = 1e-6;

/**
 * What to tell a person about their practice: the end first, then ceiling, steps, confirming pulls, count, false ones.
 * A ceiling passed by a fault that nobody could see coming is not held against them. Common practice, no source.
 */
export function judgePractice(run: PracticeRun): PracticeFinding[] {
  const judges: readonly Judge[] = [ofEnding, ofCeiling, ofSteps, ofConfirming, ofCount, ofFalse, ofSetAside];
  return judges.flatMap((judge) => judge(run) ?? []);
}

const say = (
  kind: PracticeFinding['kind'],
  code: FindingCode,
  pulls: readonly number[] = [],
): PracticeFinding => ({ kind, code, pulls });

function ofEnding(run: PracticeRun): PracticeFinding | null {
  if (run.ending.kind === 'accept') return ofAccept(run);
  if (run.ending.kind === 'stop') return ofStop(run, run.ending.because);
  return null;
}

function ofAccept({ sheet, truth }: PracticeRun): PracticeFinding {
  if (truth.fault?.seenAtPull) return say('mind', 'accepted-on-fault', [truth.fault.seenAtPull]);
  const { targetKpa, toleranceKpa } = sheet.goal;
  const isInside = Math.abs((truth.acceptedMeanKpa ?? 0) - targetKpa) <= toleranceKpa;
  return isInside ? say('well', 'accepted-true') : say('mind', 'accepted-off');
}

function ofStop({ pulls, truth }: PracticeRun, because: 'fault' | 'out-of-reach'): PracticeFinding {
  const seen = truth.fault?.seenAtPull ?? null;
  if (seen !== null) {
    if (because !== 'fault') return say('mind', 'stopped-wrong-reason', [seen]);
    const isInTime = pulls.length - seen <= IN_TIME_PULLS;
    return isInTime ? say('well', 'stopped-at-fault', [seen]) : say('mind', 'stopped-late', [seen]);
  }
  if (truth.goodDuty === null)
    return because === 'out-of-reach'
      ? say('well', 'stopped-unreachable')
      : say('mind', 'stopped-wrong-reason');
  return say('mind', 'stopped-sound');
}

function ofCeiling({ sheet, pulls }: PracticeRun): PracticeFinding {
  const past = numbersOf(pulls, ({ recordedPeakKpa }) => recordedPeakKpa > sheet.goal.ceilingKpa);
  const [first] = past;
  if (first === undefined) return say('well', 'ceiling-kept');
  const firstFault = pulls.findIndex(({ showsFault }) => showsFault) + 1;
  return first === firstFault ? say('well', 'ceiling-by-fault', past) : say('mind', 'ceiling-passed', past);
}

function ofSteps({ sheet, pulls, stepLimit }: PracticeRun): PracticeFinding | null {
  if (pulls.length === 0) return null;
  const over = numbersOf(pulls, ({ duty }, index) => {
    const before = pulls.slice(0, index).map((pull) => pull.duty);
    return duty - Math.max(sheet.controller.dutyMin, ...before) > stepLimit + STEP_SLACK;
  });
  return over.length === 0 ? say('well', 'steps-kept') : say('mind', 'steps-over', over);
}

function ofConfirming({ pulls, ending, requiredPulls }: PracticeRun): PracticeFinding | null {
  if (ending.kind !== 'accept') return null;
  const at = numbersOf(pulls, ({ duty, isSetAside }) => duty === ending.duty && !isSetAside);
  return at.length >= requiredPulls ? say('well', 'confirmed', at) : say('mind', 'confirmed-too-little', at);
}

function ofCount({ pulls, ending, truth, requiredPulls }: PracticeRun): PracticeFinding | null {
  if (ending.kind !== 'accept' || truth.fewestPulls === null) return null;
  const fewest = truth.fewestPulls - 1 + requiredPulls;
  return pulls.length <= fewest + SPARE_PULLS ? say('well', 'few-pulls') : say('mind', 'many-pulls');
}

function ofFalse({ pulls }: PracticeRun): PracticeFinding | null {
  const kept = numbersOf(pulls, ({ isFalse, isSetAside }) => isFalse && !isSetAside);
  if (kept.length > 0) return say('mind', 'false-kept', kept);
  const caught = numbersOf(pulls, ({ isFalse }) => isFalse);
  return caught.length > 0 ? say('well', 'false-set-aside', caught) : null;
}

function ofSetAside({ pulls }: PracticeRun): PracticeFinding | null {
  const good = numbersOf(
    pulls,
    (pull) => pull.isSetAside && !pull.isFalse && !pull.isSeenShort && !pull.showsFault,
  );
  return good.length > 0 ? say('mind', 'true-set-aside', good) : null;
}

function numbersOf(
  pulls: PracticeRun['pulls'],
  holds: (pull: PracticeRun['pulls'][number], index: number) => boolean,
): number[] {
  return pulls.flatMap((pull, index) => (holds(pull, index) ? [index + 1] : []));
}

import type { PracticeFinding } from '@pullbook/practice-car';
import { practiceRules } from '../../../../practice/practice-rules';

type Words = (pulls: string, count: number) => string;
const { stepLimit, requiredPulls } = practiceRules;

const words: Readonly<Record<PracticeFinding['code'], Words>> = {
  'accepted-true': () => 'The duty that you kept truly makes the target, within the tolerance.',
  'accepted-off': () =>
    'The duty that you kept does not make the target: its true mean lies outside the tolerance.',
  'accepted-on-fault': (pulls) =>
    `You kept a duty on a car that had a fault; it showed at ${pulls}. Such a car goes back on the lift.`,
  'stopped-at-fault': (pulls) => `You stopped as soon as the fault showed, at ${pulls}.`,
  'stopped-late': (pulls) => `The fault showed at ${pulls}; you drove on. Stop at the first odd sign.`,
  'stopped-sound': () =>
    'You stopped, and nothing was wrong: the target is there to be had. Careful, but a lost hour.',
  'stopped-unreachable': () => 'You saw that no duty makes this target, and stopped.',
  'stopped-wrong-reason': () => 'Stopping was right, for another reason than yours; see below what it was.',
  'ceiling-by-fault': (pulls) =>
    `A fault came and carried ${pulls} past the ceiling. Nobody could see that coming; the over-boost cut is there for it.`,
  'ceiling-passed': (pulls, count) =>
    `The ceiling was passed at ${pulls}. On a real car ${count === 1 ? 'that one pull' : 'each of them'} can cost the engine.`,
  'ceiling-kept': () => 'No pull passed the ceiling.',
  'steps-kept': () => `No step up was over ${stepLimit} points.`,
  'steps-over': (pulls) =>
    `Duty went up by more than ${stepLimit} points at ${pulls}: boost may jump where nobody has been.`,
  confirmed: (_, count) => `The duty rests on ${count} pulls.`,
  'confirmed-too-little': (_, count) =>
    `The duty rests on ${count} usable ${count === 1 ? 'pull' : 'pulls'} of ${requiredPulls} that a workshop asks for: one good reading may be luck.`,
  'few-pulls': () => 'You needed no more pulls than care asks for: little heat, fuel and tyre spent.',
  'many-pulls': () =>
    'It took more pulls than it needed. Larger steps while boost is far from the target save some.',
  'false-set-aside': (pulls, count) =>
    `You set ${pulls} aside, and rightly: ${count === 1 ? 'it' : 'they'} read falsely low.`,
  'false-kept': (pulls, count) =>
    `A falsely low reading was counted: ${pulls}. A peak that does not fit is driven again before it is believed${count === 1 ? '' : ', each time'}.`,
  'true-set-aside': (pulls) =>
    `You set a good reading aside: ${pulls}. What does not please is not wrong for that.`,
};

/** A finding in plain words. */
export function sayFinding({ code, pulls }: PracticeFinding): string {
  return words[code](sayPulls(pulls), pulls.length);
}

/** 'pull 3', 'pulls 3 and 4', 'pulls 3, 4 and 6'. */
export function sayPulls(pulls: readonly number[]): string {
  const last = pulls.at(-1);
  if (pulls.length <= 1) return `pull ${last ?? ''}`.trim();
  return `pulls ${pulls.slice(0, -1).join(', ')} and ${last}`;
}

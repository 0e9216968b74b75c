import type { Role, Stage } from '@pullbook/contracts';
import { DomainError } from '../plumbing/domain-error.js';

/** What a move of a visit is judged on. */
export interface StageMove {
  readonly from: Stage;
  readonly to: Stage;
  readonly role: Role;
  /** Whether a sign-off is sealed. */
  readonly isSealed: boolean;
  /** Pulls on record in this visit, voided ones left out. */
  readonly pullCount: number;
}

const stageWords: Record<Stage, string> = {
  booked: 'booked',
  arrived: 'arrived',
  'on-test': 'on test',
  'to-sign-off': 'to sign off',
  ready: 'ready',
  collected: 'collected',
};

/** Where a visit may go from each stage: one on, or one back where something was moved by mistake. */
const reachable: Record<Stage, readonly Stage[]> = {
  booked: ['arrived'],
  arrived: ['booked', 'on-test'],
  'on-test': ['arrived', 'to-sign-off'],
  'to-sign-off': ['on-test', 'ready'],
  ready: ['collected'],
  collected: ['ready'],
};

/** Moves that the front desk makes: taking in and handing over. */
const desksMoves = new Set(['booked arrived', 'arrived booked', 'ready collected', 'collected ready']);

/**
 * Whether a visit may be moved.
 * @throws DomainError stage-not-reachable or not-allowed, saying what is in the way
 */
export function checkStageMove(move: StageMove): void {
  const { from, to } = move;
  if (!reachable[from].includes(to)) throw notReachable(unreachableText(move));
  if (move.role === 'desk' && !desksMoves.has(`${from} ${to}`)) {
    const text = `a tuner or the owner moves a visit to ${stageWords[to]}`;
    throw new DomainError('not-allowed', text);
  }
  if (to === 'to-sign-off' && move.pullCount === 0) {
    throw notReachable('there is nothing to sign off yet: no pull is on record in this visit');
  }
  if (to === 'ready' && !move.isSealed) {
    throw notReachable('sign the visit off first: a car is ready once its sign-off is sealed');
  }
}

function unreachableText({ from, to, isSealed }: StageMove): string {
  if (from === to) return `the visit is ${stageWords[to]} already`;
  if (isSealed && from === 'ready') {
    return 'the visit is signed off and sealed; for more work on the car book a new visit';
  }
  const ways = reachable[from].map((stage) => stageWords[stage]).join(' or ');
  return `a visit that is ${stageWords[from]} goes to ${ways}, not to ${stageWords[to]}`;
}

function notReachable(text: string): DomainError {
  return new DomainError('stage-not-reachable', text, { errors: [{ field: 'stage', message: text }] });
}

import type { CorrectionPull, CorrectionRequest } from './correction-types.js';

/** Swings this well damped are the loop settling, not hunting. Common practice, no source. */
const HUNTING_DAMPING = 0.3;
/** Swings smaller than this share of the tolerance do not count. */
const COUNTING_AMPLITUDE_RATIO = 0.25;
/** Settled boost within this share of the tolerance is on target. */
const ON_TARGET_RATIO = 0.5;
/** After lowering the strength by a third a loop's damping must have risen by this much. */
const LOWERED_RATIO = 0.7;
const DAMPING_GAIN = 0.03;

/** What the pulls say about the last strength and those before it. */
export interface CorrectionReading {
  readonly strength: number;
  readonly settledErrorKpa: number;
  readonly isHunting: boolean;
  readonly isSagging: boolean;
  readonly frequencyHz: number | null;
  readonly dampingRatio: number | null;
  /** Lowest strength above the last one that hunted; highest below it that did not. */
  readonly huntingStrength: number | null;
  readonly steadyStrength: number | null;
  /** Hunting that a much lower strength has not calmed. */
  readonly isDeafToStrength: boolean;
}

/** Reads closed-loop pulls into what the advice needs. */
export function readCorrection({ goal, pulls }: CorrectionRequest): CorrectionReading {
  const last = pulls.at(-1);
  const strength = last?.strength ?? NaN;
  const here = pulls.filter((pull) => pull.strength === strength);
  const meanKpa = here.reduce((sum, pull) => sum + pull.settledKpa, 0) / here.length;
  const settledErrorKpa = meanKpa - goal.targetKpa;
  const hunts = (pull: CorrectionPull): boolean => isHunting(pull, goal.toleranceKpa);
  const worst = here.filter(hunts).sort((a, b) => dampingOf(a) - dampingOf(b))[0];
  const huntingAbove = pulls.filter((pull) => hunts(pull) && pull.strength > strength);
  const steadyBelow = pulls.filter((pull) => !hunts(pull) && pull.strength < strength);
  return {
    strength,
    settledErrorKpa,
    isHunting: worst !== undefined,
    isSagging: Math.abs(settledErrorKpa) > ON_TARGET_RATIO * goal.toleranceKpa,
    frequencyHz: worst?.hunting?.frequencyHz ?? null,
    dampingRatio: worst === undefined ? null : dampingOf(worst),
    huntingStrength:
      huntingAbove.length === 0 ? null : Math.min(...huntingAbove.map((pull) => pull.strength)),
    steadyStrength: steadyBelow.length === 0 ? null : Math.max(...steadyBelow.map((pull) => pull.strength)),
    isDeafToStrength: worst !== undefined && isDeaf(worst, huntingAbove),
  };
}

/** Whether hunting at a strength is no better damped than it was at a much higher one. */
function isDeaf(now: CorrectionPull, huntingAbove: readonly CorrectionPull[]): boolean {
  return huntingAbove.some(
    (before) =>
      now.strength <= LOWERED_RATIO * before.strength && dampingOf(now) < dampingOf(before) + DAMPING_GAIN,
  );
}

function isHunting({ hunting }: CorrectionPull, toleranceKpa: number): boolean {
  if (hunting === null || hunting.amplitudeKpa < COUNTING_AMPLITUDE_RATIO * toleranceKpa) return false;
  return (hunting.dampingRatio ?? 0) < HUNTING_DAMPING;
}

function dampingOf({ hunting }: CorrectionPull): number {
  return hunting?.dampingRatio ?? 0;
}

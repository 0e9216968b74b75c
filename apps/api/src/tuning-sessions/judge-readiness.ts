import { readinessKeys, type CarLimits, type ReadinessKey } from '@pullbook/contracts';
import { lowestCarLimit } from './lowest-car-limit.js';
import { readinessQuestions } from './readiness-questions.js';

/** What an over-boost cut must stand between. */
export interface CutBounds {
  readonly limits: CarLimits;
  /** Presets of the car that could be driven, with the ceiling that is agreed for each. */
  readonly ceilings: readonly { readonly name: string; readonly ceilingKpa: number }[];
}

/** What a readiness check is judged on. */
export interface ReadinessFacts extends CutBounds {
  readonly okKeys: ReadonlySet<ReadinessKey>;
  readonly overBoostCutKpa: number | null;
}

/** Whether the first pull may be driven, and what is still open in plain words. */
export interface ReadinessJudgement {
  readonly passed: boolean;
  readonly missing: string[];
}

/**
 * Judges a readiness check: every question answered yes, and an over-boost cut that stands between the ceilings and
 * what the car can stand. At or above every ceiling, because a cut below a ceiling would end good pulls and the ceiling
 * would no longer be the level that protects; not above the car's lowest known limit, because the cut is the last
 * guard and must act before a part is overloaded or the sensor goes blind. Idle vacuum is a hint only and never judged.
 */
export function judgeReadiness(facts: ReadinessFacts): ReadinessJudgement {
  const open = readinessKeys
    .filter((key) => !facts.okKeys.has(key))
    .map((key) => `not confirmed: ${readinessQuestions[key]}`);
  const missing = [...open, ...faultsOfCut(facts)];
  return { passed: missing.length === 0, missing };
}

function faultsOfCut({ overBoostCutKpa, limits, ceilings }: ReadinessFacts): string[] {
  if (overBoostCutKpa === null) return ['the over-boost cut is not set: enter the level at which it acts'];
  const lowest = lowestCarLimit(limits);
  const isAboveLimit = lowest !== null && overBoostCutKpa > lowest.limitKpa;
  const tooHigh = isAboveLimit
    ? [
        `the over-boost cut (${overBoostCutKpa} kPa) acts too late: the car's lowest known limit is its ${lowest.name}, ${lowest.limitKpa} kPa; set it at or below that`,
      ]
    : [];
  const tooLow = ceilings
    .filter(({ ceilingKpa }) => ceilingKpa > overBoostCutKpa)
    .map(
      ({ name, ceilingKpa }) =>
        `the over-boost cut (${overBoostCutKpa} kPa) stands below the ceiling of ${name} (${ceilingKpa} kPa): raise the cut or lower that ceiling`,
    );
  return [...tooHigh, ...tooLow];
}

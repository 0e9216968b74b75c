import { readinessKeys, type ReadinessKey } from '@pullbook/contracts';
import { leastOverBoostCut } from '@pullbook/tuning-math';
import { ceilingOfCar, sayLimit, type BuiltCeiling, type CeilingCar } from '../engine/ceiling-of-car.js';
import { lowestCarLimit, type BindingLimit } from './lowest-car-limit.js';
import { readinessQuestions } from './readiness-questions.js';

/** What an over-boost cut must stand between: what the car can stand, and the ceilings that keep their distance below it. */
export interface CutBounds {
  readonly car: CeilingCar;
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
 * Judges a readiness check: every question answered yes, an over-boost cut that is not above the car's lowest known
 * limit, because it is the last guard and must act before a part is overloaded or the sensor goes blind, and every
 * ceiling within what `ceilingOfCar` allows with the cut as it is set now: the one rule for ceilings, which keeps them
 * 5 kPa below the cut. A cut closer than that is set off by the scatter of good pulls, and people who have seen it cry
 * wolf raise it. Idle vacuum is a hint only and never judged.
 */
export function judgeReadiness(facts: ReadinessFacts): ReadinessJudgement {
  const open = readinessKeys
    .filter((key) => !facts.okKeys.has(key))
    .map((key) => `not confirmed: ${readinessQuestions[key]}`);
  const missing = [...open, ...faultsOfCut(facts), ...faultsOfCeilings(facts)];
  return { passed: missing.length === 0, missing };
}

function faultsOfCut({ overBoostCutKpa, car }: ReadinessFacts): string[] {
  if (overBoostCutKpa === null) return ['the over-boost cut is not set: enter the level at which it acts'];
  const lowest = lowestCarLimit(car.limits);
  if (lowest === null || overBoostCutKpa <= lowest.limitKpa) return [];
  return [
    `the over-boost cut (${overBoostCutKpa} kPa) acts too late: the car's lowest known limit is its ${lowest.name}, ${lowest.limitKpa} kPa; set it to ${lowest.limitKpa} kPa or less`,
  ];
}

/** What is lost when a decimal figure less its margin is computed is no pressure. */
const EQUAL_KPA = 1e-9;

function faultsOfCeilings({ overBoostCutKpa, car, ceilings }: ReadinessFacts): string[] {
  const limits = { ...car.limits, overBoostCutKpa: overBoostCutKpa ?? car.limits.overBoostCutKpa };
  const allowed = ceilingOfCar({ ...car, limits });
  if (allowed === null) return [];
  return ceilings
    .filter(({ ceilingKpa }) => ceilingKpa > allowed.ceilingKpa + EQUAL_KPA)
    .map((ceiling) =>
      allowed.binds.cause === 'over-boost-cut' && overBoostCutKpa !== null
        ? sayTooClose({ ...ceiling, overBoostCutKpa, allowed, lowest: lowestCarLimit(car.limits) })
        : `the ceiling of ${ceiling.name} (${ceiling.ceilingKpa} kPa) stands above the car's ${sayLimit(allowed.binds)}: lower that ceiling to ${tidy(allowed.ceilingKpa)} kPa or less`,
    );
}

interface TooClose {
  readonly name: string;
  readonly ceilingKpa: number;
  readonly overBoostCutKpa: number;
  readonly allowed: BuiltCeiling;
  readonly lowest: BindingLimit | null;
}

/** What to do about a cut that stands too close over a ceiling, or below it. */
function sayTooClose({ name, ceilingKpa, overBoostCutKpa, allowed, lowest }: TooClose): string {
  const leastKpa = tidy(leastOverBoostCut(ceilingKpa));
  const tooClose = `the over-boost cut (${overBoostCutKpa} kPa) must stand at least ${tidy(leastKpa - ceilingKpa)} kPa above the ceiling of ${name} (${ceilingKpa} kPa), so that scatter does not set it off`;
  const lower = `lower that ceiling to ${tidy(allowed.ceilingKpa)} kPa or less`;
  if (lowest === null || leastKpa <= lowest.limitKpa)
    return `${tooClose}: set the cut to ${leastKpa} kPa or more, or ${lower}`;
  return `${tooClose}: ${lower}, since the cut may not stand above the car's ${lowest.name}, ${lowest.limitKpa} kPa`;
}

const tidy = (kpa: number): number => Number(kpa.toFixed(3));

import type { PullNew, SettingRange } from '@pullbook/contracts';
import type { FormContract } from '../../../../components/form/read-values';
import type { Issue } from '../../../../components/form/say-issue';

const boostKpa = { minimum: -100, maximum: 600 };
const gears = { minimum: 1, maximum: 12 };
/** Settings are typed in decimals: 30.1 is three steps of 0.1 above 29.8. */
const gridSlack = 1e-6;

/**
 * What a typed pull must be, without the schemas: the visit screen records before and without them. It asks for no
 * less than `PullNew` does, and for a duty that the controller can be set to, so that a pull recorded without network
 * is not refused hours later.
 */
export function pullContract(range: SettingRange): FormContract<PullNew> {
  return {
    safeParse: (value) => {
      const pull = value as PullNew;
      const issues = [
        ...between('peakKpa', pull.peakKpa, boostKpa),
        ...dutyIssues(pull.dutyPct, range),
        ...(pull.gear === null ? [] : gearIssues(pull.gear)),
      ];
      return issues.length === 0 ? { success: true, data: pull } : { success: false, error: { issues } };
    },
  };
}

interface Limits {
  readonly minimum: number;
  readonly maximum: number;
}

/** Complaints about a figure that is missing or outside its limits. */
export function between(name: string, value: number | null, { minimum, maximum }: Limits): Issue[] {
  const path = [name];
  if (value === null || !Number.isFinite(value)) {
    return [{ code: 'invalid_type', path, message: 'not a number' }];
  }
  if (value < minimum) return [{ code: 'too_small', origin: 'number', path, minimum, message: 'too small' }];
  if (value > maximum) return [{ code: 'too_big', origin: 'number', path, maximum, message: 'too big' }];
  return [];
}

function dutyIssues(dutyPct: number | null, { min, max, step }: SettingRange): Issue[] {
  const outside = between('dutyPct', dutyPct, { minimum: min, maximum: max });
  if (outside.length > 0 || dutyPct === null) return outside;
  const steps = (dutyPct - min) / step;
  if (Math.abs(steps - Math.round(steps)) <= gridSlack) return [];
  const message = `this controller goes in steps of ${step} from ${min} %`;
  return [{ code: 'custom', path: ['dutyPct'], message }];
}

function gearIssues(gear: number): Issue[] {
  if (Number.isInteger(gear)) return between('gear', gear, gears);
  return [{ code: 'custom', path: ['gear'], message: 'a gear is a whole number' }];
}

import type { Controller, PullNew, SettingRange } from '@pullbook/contracts';
import type { FormContract } from '../../../../components/form/read-values';
import type { Issue } from '../../../../components/form/say-issue';
import { between } from './pull-contract';

const settledKpa = { minimum: 1, maximum: 600 };
const seconds = { minimum: 0.001, maximum: 120 };
const heldForS = { minimum: 0, maximum: 120 };
const gridSlack = 1e-6;

/** Adds to the contract of a typed pull what its other settings and figures must be. */
export function withMore(pull: FormContract<PullNew>, controller: Controller | null): FormContract<PullNew> {
  return {
    safeParse: (value) => {
      const first = pull.safeParse(value);
      const more = moreIssues(value as PullNew, controller);
      if (first.success) return more.length === 0 ? first : { success: false, error: { issues: more } };
      return { success: false, error: { issues: [...first.error.issues, ...more] } };
    },
  };
}

function moreIssues(pull: PullNew, controller: Controller | null): Issue[] {
  return [
    ...(pull.settledKpa === null ? [] : between('settledKpa', pull.settledKpa, settledKpa)),
    ...(pull.riseTimeS === null ? [] : between('riseTimeS', pull.riseTimeS, seconds)),
    ...(pull.heldForS === null ? [] : between('heldForS', pull.heldForS, heldForS)),
    ...settingIssues('holdPct', pull.holdPct, controller?.holdPct ?? null),
    ...settingIssues('correctionStrength', pull.correctionStrength, controller?.correction ?? null),
  ];
}

function settingIssues(name: string, value: number | null, range: SettingRange | null): Issue[] {
  if (value === null || range === null) return [];
  const outside = between(name, value, { minimum: range.min, maximum: range.max });
  const steps = (value - range.min) / range.step;
  if (outside.length > 0 || Math.abs(steps - Math.round(steps)) <= gridSlack) return outside;
  const message = `this controller goes in steps of ${range.step} from ${range.min}`;
  return [{ code: 'custom', path: [name], message }];
}

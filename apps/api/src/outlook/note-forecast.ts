import type { ConditionsModel } from '@pullbook/tuning-math';
import { listConditions } from './condition-words.js';
import type { PresetHistory } from './load-history.js';

/** What a forecast rests on and what it leaves out, in plain words. */
export function noteForecast({ intakeSource }: PresetHistory, model: ConditionsModel): string[] {
  const named = (wanted: string): string =>
    listConditions(model.effects.filter(({ status }) => status === wanted).map(({ condition }) => condition));
  const [unknown, none, seen] = [named('unknown'), named('none-seen'), named('seen')];
  return [
    'Method: Bayesian linear regression over these pulls; each range is to hold 95 % of single pulls.',
    ...(seen === '' ? [] : [`These pulls tell what ${seen} does.`]),
    ...(none === '' ? [] : [`They tell of no effect worth naming of ${none}.`]),
    ...(unknown === ''
      ? []
      : [
          `They do not tell what ${unknown} does: cells that need it say unknown, and their range allows for it.`,
        ]),
    intakeSource === 'pull'
      ? "Intake air is each pull's own reading."
      : 'Intake air is the air written down for the tuning session.',
  ];
}

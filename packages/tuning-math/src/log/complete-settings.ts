import { LogError } from './log-error.js';
import { PULL_SETTING_FACTS } from './pull-setting-facts.js';
import { DEFAULT_PULL_SETTINGS, type PullSettings } from './pull-settings.js';

/** Gears that cars have. */
const MOST_GEARS = 10;

/**
 * All settings of the analysis: the default ones with changes.
 *
 * @throws LogError `setting-out-of-range` naming the first that is outside its range in `PULL_SETTING_FACTS`
 */
export function completeSettings(changes: Partial<PullSettings> = {}): PullSettings {
  const settings = { ...DEFAULT_PULL_SETTINGS, ...changes };
  for (const name of Object.keys(PULL_SETTING_FACTS) as (keyof typeof PULL_SETTING_FACTS)[]) {
    const { lowest, highest, isWhole } = PULL_SETTING_FACTS[name];
    const value = settings[name];
    const isSound = value >= lowest && value <= highest && (!isWhole || Number.isInteger(value));
    if (!isSound)
      throw outOfRange(name, value, `a ${isWhole ? 'whole ' : ''}number from ${lowest} to ${highest}`);
  }
  refuseGears(settings.trustedGears);
  return settings;
}

function refuseGears(gears: readonly number[]): void {
  const isSound =
    gears.length > 0 && gears.every((gear) => Number.isInteger(gear) && gear >= 1 && gear <= MOST_GEARS);
  if (!isSound)
    throw outOfRange('trustedGears', gears.join(', '), `one gear or more, from 1 to ${MOST_GEARS}`);
}

function outOfRange(name: keyof PullSettings, value: number | string, allowed: string): LogError {
  return new LogError('setting-out-of-range', `the setting ${name} cannot be ${value}`, `give ${allowed}`);
}

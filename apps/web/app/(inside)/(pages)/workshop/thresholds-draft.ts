import type { PullSettings } from '@pullbook/contracts';
import { parseNumber, PULL_SETTING_FACTS, type PullSettingFacts } from '@pullbook/tuning-math';

type NumberSetting = keyof typeof PULL_SETTING_FACTS;

/** Settings that are a number, in the order of the form. */
export const names = Object.keys(PULL_SETTING_FACTS) as NumberSetting[];

/** The settings as text, by name. */
export type Typed = Readonly<Record<NumberSetting | 'trustedGears', string>>;

export function textOf(settings: PullSettings): Typed {
  const numbers = names.map((name) => [name, String(settings[name])] as const);
  return {
    ...(Object.fromEntries(numbers) as Record<NumberSetting, string>),
    trustedGears: settings.trustedGears.join(', '),
  };
}

/** What was typed, once it has no faults. */
export function settingsOf(typed: Typed): Partial<PullSettings> {
  const numbers = names.map((name) => [name, parseNumber(typed[name])] as const);
  return { ...Object.fromEntries(numbers), trustedGears: gearsOf(typed.trustedGears) };
}

const gearsOf = (text: string) =>
  text
    .split(/[\s,;]+/)
    .filter((one) => one !== '')
    .map(Number);

/** What is wrong, by name of the setting. */
export function faultsOf(typed: Typed): Partial<Record<keyof Typed, string>> {
  const faults: Partial<Record<keyof Typed, string>> = {};
  for (const name of names) {
    const { lowest, highest, isWhole } = PULL_SETTING_FACTS[name];
    const value = numberOrNaN(typed[name]);
    if (!(value >= lowest && value <= highest) || (isWhole && !Number.isInteger(value)))
      faults[name] = `${isWhole ? 'A whole number from' : 'From'} ${lowest} to ${highest}.`;
  }
  const gears = gearsOf(typed.trustedGears);
  if (gears.length === 0 || !gears.every((gear) => Number.isInteger(gear) && gear >= 1 && gear <= 10))
    faults.trustedGears = 'One gear or more, such as 3, 4.';
  return faults;
}

function numberOrNaN(text: string): number {
  try {
    return parseNumber(text);
  } catch {
    return NaN;
  }
}

export const labelOf = ({ label, unit }: PullSettingFacts) => (unit === '' ? label : `${label}, ${unit}`);

/** Meaning, range and default of a setting. */
export function hintOf({ meaning, lowest, highest, unit }: PullSettingFacts, usual: number): string {
  return `${meaning} ${lowest} to ${highest} ${unit}; as it comes ${usual}.`.replace(' ;', ';');
}

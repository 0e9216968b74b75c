import type { ConditionName } from '@pullbook/contracts';
import { formatNumber, type UncorrectedChange } from '@pullbook/tuning-math';

/** Conditions as they are called in a sentence. */
export const conditionWords: Readonly<Record<ConditionName, string>> = {
  gear: 'gear',
  gradient: 'gradient',
  intake: 'intake air',
  barometer: 'barometer',
  heatSoak: 'heat soak',
};

/** 'gear, intake air and barometer'. */
export function listConditions(names: readonly ConditionName[]): string {
  return joinWords(names.map((name) => conditionWords[name]));
}

/** 'a', 'a and b', 'a, b and c'. */
export function joinWords(words: readonly string[]): string {
  if (words.length < 2) return words[0] ?? '';
  return `${words.slice(0, -1).join(', ')} and ${words.at(-1) ?? ''}`;
}

/** How a change of each condition is told: digits, then the words for more and for less. */
const changeWords: Readonly<Record<ConditionName, readonly [digits: number, more: string, less: string]>> = {
  gear: [1, 'gears higher', 'gears lower'],
  gradient: [1, '% more uphill', '% more downhill'],
  intake: [0, 'K warmer intake air', 'K colder intake air'],
  barometer: [1, 'kPa higher barometer', 'kPa lower barometer'],
  heatSoak: [0, 'K more heat soak', 'K less heat soak'],
};

/** '12 K warmer intake air'. */
export function sayChange({ condition, change }: UncorrectedChange): string {
  const [digits, more, less] = changeWords[condition];
  return `${formatNumber(Math.abs(change), digits)} ${change > 0 ? more : less}`;
}

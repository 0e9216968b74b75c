import type { Series } from '../filter/series.js';

/**
 * Moment at which a series first rises to a level, linear between samples; null where it starts at or
 * above the level or never gets there. O(n).
 */
export function firstReachS({ timeS, values }: Series, level: number): number | null {
  const index = values.findIndex((value) => value >= level);
  if (index <= 0) return null;
  const before = values[index - 1] as number;
  const share = (level - before) / ((values[index] as number) - before);
  return (timeS[index - 1] as number) + share * ((timeS[index] as number) - (timeS[index - 1] as number));
}

/** The last such moment before `untilS`: where the final rise passes the level. */
export function lastReachS({ timeS, values }: Series, level: number, untilS: number): number | null {
  for (let index = values.length - 1; index > 0; index -= 1) {
    if ((timeS[index - 1] as number) > untilS) continue;
    const [before, value] = [values[index - 1] as number, values[index] as number];
    if (before >= level || value < level) continue;
    const share = (level - before) / (value - before);
    return (timeS[index - 1] as number) + share * ((timeS[index] as number) - (timeS[index - 1] as number));
  }
  return null;
}

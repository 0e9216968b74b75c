import type { ScaledPulls } from './scaled-pulls.js';

/**
 * Position of the pull that must be allowed to be a false one: what lies past it is known by nothing else. The lowest of
 * those at the last pull's duty, so that their order does not matter; -1 where there are none.
 */
export function doubtedPull({ duties, ratios, count }: ScaledPulls): number {
  let lowest = count - 1;
  for (let pull = 0; pull < count; pull += 1) {
    if (duties[pull] === duties[count - 1] && (ratios[pull] as number) < (ratios[lowest] as number))
      lowest = pull;
  }
  return lowest;
}

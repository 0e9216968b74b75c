import type { ScaledPulls } from './scaled-pulls.js';

/** Pulls gathered by duty: those of one place differ by heat and scatter alone. */
export interface PullPlaces {
  /** Places. */
  readonly count: number;
  /** Duty of each place, %. */
  readonly duties: Float64Array;
  /** Place of each pull. */
  readonly placeOf: Int32Array;
}

/**
 * Gathers pulls of the very same duty, in the order in which their duties first come.
 *
 * @param apart pulls that get a place of their own; default none
 */
export function pullPlaces({ duties }: ScaledPulls, apart: ReadonlySet<number> = NONE): PullPlaces {
  const known = new Map<number, number>();
  const found: number[] = [];
  const placeOf = new Int32Array(duties.length);
  duties.forEach((duty, pull) => {
    const isApart = apart.has(pull);
    const place = (isApart ? undefined : known.get(duty)) ?? found.length;
    if (place === found.length) found.push(duty);
    if (!isApart) known.set(duty, place);
    placeOf[pull] = place;
  });
  return { count: found.length, duties: Float64Array.from(found), placeOf };
}

const NONE: ReadonlySet<number> = new Set();

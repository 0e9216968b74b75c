import { byShape } from './by-shape.js';
import { shareIntervalPct } from './share-interval-pct.js';
import type { TuningRun } from './tune-car.js';

/** Ranges that are looked at, in the order of `RANGE_ENDS`: share of next peaks that each promises to hold, %. */
export const PROMISED_PCT: readonly number[] = [50, 80, 95];

/** How well the predicted ranges of one kind of car held. */
export interface Calibration {
  readonly name: string;
  readonly pulls: number;
  /** Share of peaks that each range held, %, beside `PROMISED_PCT`. */
  readonly heldPct: readonly number[];
  /** Between what each share may lie by chance alone: its 95 % interval, %. */
  readonly intervalsPct: readonly (readonly [number, number])[];
  /**
   * Cars that were drawn for not fitting their goal. A first look cannot know of that, so that their first peaks
   * lie outside by the very choice of the cars.
   */
  readonly isChosenByOutcome: boolean;
}

/** All healthy cars and cars before their fault showed, then each shape. */
export function calibrate(runs: readonly TuningRun[]): Calibration[] {
  return [
    calibrationOf('all', runs),
    ...byShape(runs).map(([name, ofShape]) => calibrationOf(name, ofShape)),
  ].filter(({ pulls }) => pulls > 0);
}

function calibrationOf(name: string, runs: readonly TuningRun[]): Calibration {
  const held = runs.flatMap(peaksHeld);
  const heldPct = PROMISED_PCT.map(
    (_, range) => (100 * held.filter((ranges) => ranges[range]).length) / held.length,
  );
  return {
    name,
    pulls: held.length,
    heldPct,
    intervalsPct: heldPct.map((pct) => shareIntervalPct(pct, held.length)),
    isChosenByOutcome: runs.every(({ car }) =>
      ['out-of-reach', 'floor-over-target'].includes(car.shape.kind),
    ),
  };
}

/** For each pull before a fault showed, which of the ranges held its peak. */
function peaksHeld({ pulls, foretold }: TuningRun): boolean[][] {
  return pulls.flatMap(({ peakKpa, showsFault }, index) => {
    const ends = foretold[index];
    if (showsFault || !ends) return [];
    const holds = (range: number): boolean =>
      peakKpa >= (ends[2 * range] ?? Infinity) && peakKpa <= (ends[2 * range + 1] ?? -Infinity);
    return [PROMISED_PCT.map((_, range) => holds(range))];
  });
}

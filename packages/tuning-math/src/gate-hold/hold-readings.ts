import { LET_GO_PLACES, riseAt, type RiseShape } from './curve-family.js';
import type { HoldPull } from './gate-hold-types.js';
import { pullOvershoot } from './pull-overshoot.js';

/** The pulls from the lowest hold on, and by how much the curve at hand lets each rise at each place of letting go. */
export interface HoldReadings {
  readonly holdPct: Float64Array;
  readonly overshootPct: Float64Array;
  /** Entries of a pull side by side, never falling. */
  readonly risePct: Float64Array;
}

/** Lays the pulls out for `readRises` and `baseLevel`. */
export function holdReadings(pulls: readonly HoldPull[]): HoldReadings {
  const upward = [...pulls].sort((a, b) => a.holdPct - b.holdPct);
  return {
    holdPct: Float64Array.from(upward, (pull) => pull.holdPct),
    overshootPct: Float64Array.from(upward, pullOvershoot),
    risePct: new Float64Array(LET_GO_PLACES.length * upward.length),
  };
}

/** Fills in the rises that a curve gives. */
export function readRises({ holdPct, risePct }: HoldReadings, shape: RiseShape, jitterPct: number): void {
  const places = LET_GO_PLACES.length;
  for (let pull = 0; pull < holdPct.length; pull += 1) {
    const past = (holdPct[pull] ?? 0) - shape.kneePct;
    for (let place = 0; place < places; place += 1) {
      const aside = (LET_GO_PLACES[place] ?? 0) * jitterPct;
      risePct[places * pull + place] = riseAt(past + aside, shape.slope, shape.widthPct);
    }
  }
}

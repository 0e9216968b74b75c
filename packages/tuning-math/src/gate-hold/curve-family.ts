import { softRamp } from './soft-ramp.js';

/** One way in which overshoot may rise with gate hold: level, a bend of some width at the knee, then straight. */
export interface RiseShape {
  /** Boost at the moment of letting go from which overshoot rises, % of target. */
  readonly kneePct: number;
  /** Rise past the bend, % overshoot a point. */
  readonly slope: number;
  /** Width of the bend, points; a small one is a sharp corner. */
  readonly widthPct: number;
  /** Share of the belief before any pull, the knee's apart. */
  readonly weight: number;
}

/** A figure that is thought possible, and how likely. */
export type Node = readonly [value: number, weight: number];

/**
 * Where the gate is let go, boost still rises by what it gains while solenoid, hose and actuator follow. One
 * point more of hold therefore is about one point more of peak: slopes near 1 are likely, steeper ones stand
 * for gates that stick and let go at once, flat ones for gates that open against the flow. Common practice and
 * the physical model in packages/practice-car (cars of development, not those of the benchmark).
 */
const SLOPES: readonly Node[] = [
  [0.45, 0.1],
  [0.7, 0.3],
  [0.95, 0.4],
  [1.4, 0.14],
  [2.2, 0.04],
  [3.6, 0.02],
];
const WIDTHS: readonly Node[] = [
  [0.5, 0.45],
  [3, 0.33],
  [7, 0.22],
];
/** Pull-to-pull scatter of the overshoot that has nothing to do with the hold, %. */
export const SCATTERS: readonly Node[] = [
  [0.35, 0.68],
  [0.9, 0.26],
  [2.2, 0.06],
];
/** How far apart the moments of letting go lie, in points of boost, as multiples of the expected. */
export const JITTERS: readonly Node[] = [
  [0.7, 0.3],
  [1.4, 0.42],
  [2.6, 0.24],
  [4.5, 0.04],
];
const LOWEST_KNEE = 20;
const HIGHEST_KNEE = 125;
const KNEE_STEP = 3;

/** Every shape that is thought possible. */
export const RISE_SHAPES: readonly RiseShape[] = kneesOf().flatMap((kneePct) =>
  SLOPES.flatMap(([slope, slopeWeight]) =>
    WIDTHS.map(([widthPct, widthWeight]) => ({
      kneePct,
      slope,
      widthPct,
      weight: slopeWeight * widthWeight,
    })),
  ),
);

function kneesOf(): number[] {
  const count = Math.round((HIGHEST_KNEE - LOWEST_KNEE) / KNEE_STEP) + 1;
  return Array.from({ length: count }, (_, index) => LOWEST_KNEE + index * KNEE_STEP);
}

/** Rise of the overshoot, %, at this much boost past the knee, points, when the gate is let go. */
export function riseAt(pastPct: number, slope: number, widthPct: number): number {
  return slope * widthPct * softRamp(pastPct / widthPct);
}

/**
 * The moment of letting go is even over the jitter; the middles of as many even parts of it stand for it.
 */
export const LET_GO_PLACES: readonly number[] = [-0.4, -0.2, 0, 0.2, 0.4];

import { drawBetween } from '../../random/draw-between.js';
import { drawNormal } from '../../random/draw-normal.js';
import type { Random } from '../../random/seeded-random.js';

/**
 * Responses of the judgement set that are not smooth or not even in slope; see `JUDGEMENT_RISES`. Ranges are
 * reasoned as for the smooth ones; slopes are in base boosts per point of duty; common practice, no source.
 */

const KNOTS = 6;

/**
 * Cubic pieces between knots at uneven distances whose mean slopes differ by up to forty times, joined with equal
 * slopes; never falls. Source of the joints: Fritsch & Butland, SIAM J. Sci. Stat. Comput. 5 (1984).
 */
export function cubicPieces(random: Random, steepness: number): (duty: number) => number {
  const gaps = Array.from({ length: KNOTS }, () => drawBetween(random, 0.5, 1.5));
  const whole = gaps.reduce((sum, gap) => sum + gap, 0);
  const widths = gaps.map((gap) => (100 * gap) / whole);
  const slopes = gaps.map(() => steepness * 0.002 * 40 ** random());
  const joints = jointSlopes(widths, slopes);
  return (duty) => 1 + cubicRise({ widths, slopes, joints }, Math.min(Math.max(duty, 0), 100));
}

/** Weighted harmonic mean of the slopes on both sides; the outer ends take the slope of their piece. */
function jointSlopes(widths: readonly number[], slopes: readonly number[]): number[] {
  const joints = [slopes[0] ?? 0];
  for (let piece = 1; piece < slopes.length; piece += 1) {
    const [left = 1, right = 1] = widths.slice(piece - 1, piece + 1);
    const [before = 0, after = 0] = slopes.slice(piece - 1, piece + 1);
    const weight = (2 * right + left) / before + (right + 2 * left) / after;
    joints.push((3 * (left + right)) / weight);
  }
  return [...joints, slopes[slopes.length - 1] ?? 0];
}

interface Cubics {
  readonly widths: readonly number[];
  readonly slopes: readonly number[];
  readonly joints: readonly number[];
}

function cubicRise({ widths, slopes, joints }: Cubics, duty: number): number {
  let risen = 0;
  let from = 0;
  for (let piece = 0; piece < widths.length; piece += 1) {
    const [width = 1, slope = 0] = [widths[piece], slopes[piece]];
    const inside = Math.min(duty - from, width);
    const share = inside / width;
    const [start = 0, end = 0] = joints.slice(piece, piece + 2);
    const square = (3 * slope - 2 * start - end) * share;
    const cube = (start + end - 2 * slope) * share * share;
    risen += inside * (start + square + cube);
    from += width;
    if (duty <= from) break;
  }
  return risen;
}

/** Two hard corners up with a shelf between them: having passed one steep stretch does not tell of the next. */
export function doubleKnee(random: Random, steepness: number): (duty: number) => number {
  const first = drawBetween(random, 10, 50);
  const shelf = first + drawBetween(random, 8, 20);
  const second = shelf + drawBetween(random, 8, 24);
  const slopes = [
    drawBetween(random, 0.0005, 0.004),
    drawBetween(random, 0.02, 0.05) * steepness,
    drawBetween(random, 0.001, 0.008),
    drawBetween(random, 0.02, 0.055) * steepness,
  ];
  const knots = [0, first, shelf, second, Infinity];
  return (duty) =>
    slopes.reduce((risen, slope, piece) => {
      const [from = 0, to = 0] = knots.slice(piece, piece + 2);
      return risen + slope * Math.max(Math.min(duty, to) - from, 0);
    }, 1);
}

/** A slope that comes and goes along duty: pulses of solenoid and hose that add up at some settings. */
export function ripple(random: Random, steepness: number): (duty: number) => number {
  const slope = drawBetween(random, 0.015, 0.034) * steepness;
  const period = drawBetween(random, 15, 36);
  const depth = drawBetween(random, 0.5, 0.95);
  const phase = drawBetween(random, 0, 2 * Math.PI);
  const wave = (duty: number): number =>
    ((depth * period) / (2 * Math.PI)) * Math.sin((2 * Math.PI * duty) / period + phase);
  return (duty) => 1 + slope * (duty + wave(duty) - wave(0));
}

/** A gentle slope and somewhere on it a sudden one: the gate leaves its seat. */
export function snap(random: Random, steepness: number): (duty: number) => number {
  const middle = drawBetween(random, 30, 80);
  const width = drawBetween(random, 3.5, 8) / steepness;
  const jump = drawBetween(random, 0.7, 1.8);
  const slope = drawBetween(random, 0.001, 0.007);
  const opened = (duty: number): number => 0.5 + Math.atan(Math.sinh((duty - middle) / width)) / Math.PI;
  return (duty) => 1 + slope * duty + jump * (opened(duty) - opened(0));
}

/** A floor far above the spring that itself creeps up with duty, and a logistic rise that comes out of it. */
export function creepingLogistic(random: Random, steepness: number): (duty: number) => number {
  const lift = drawBetween(random, 1.12, 1.5);
  const creep = drawBetween(random, 0.0004, 0.003);
  const middle = drawBetween(random, 42, 80);
  const width = drawBetween(random, 4.5, 10) / steepness;
  const rise = drawBetween(random, 1, 2.4);
  const sharpness = 8 * Math.exp(0.4 * drawNormal(random));
  return (duty) => {
    const floor = lift + creep * duty;
    const risen = 1 + rise / (1 + Math.exp(-(duty - middle) / width));
    return (floor ** sharpness + risen ** sharpness) ** (1 / sharpness);
  };
}

import { drawBetween } from '../random/draw-between.js';
import type { Random } from '../random/seeded-random.js';
import type { RiseDraw } from './rise-draw.js';

/**
 * Responses that the advice was made and tuned with: other formulas than those it is judged on, over about the
 * same ground. Ranges are reasoned; common practice, no source.
 */
export const DEVELOPMENT_RISES: Readonly<Record<string, RiseDraw>> = {
  hill,
  'arc step': arcStep,
  'three slopes': threeSlopes,
  'dead zone power': deadZonePower,
  'soft limit': softLimit,
  'lifted floor': liftedFloor,
  pole,
  wavy,
};

function hill(random: Random, steepness: number): (duty: number) => number {
  const order = drawBetween(random, 2, 7) * Math.sqrt(steepness);
  const half = drawBetween(random, 35, 80);
  const rise = drawBetween(random, 0.9, 2.6);
  return (duty) => 1 + (rise * duty ** order) / (half ** order + duty ** order);
}

function arcStep(random: Random, steepness: number): (duty: number) => number {
  const middle = drawBetween(random, 35, 75);
  const width = drawBetween(random, 5, 16) / steepness;
  const rise = drawBetween(random, 0.8, 2.2);
  const foot = Math.atan(-middle / width);
  return (duty) => 1 + (rise * (Math.atan((duty - middle) / width) - foot)) / Math.PI;
}

/** Three straight lines with corners rounded over a few points of duty. */
function threeSlopes(random: Random, steepness: number): (duty: number) => number {
  const first = drawBetween(random, 10, 55);
  const second = first + drawBetween(random, 12, 35);
  const slopes = [
    drawBetween(random, 0.0003, 0.006),
    drawBetween(random, 0.008, 0.05) * steepness,
    drawBetween(random, 0.004, 0.05) * steepness,
  ] as const;
  const round = drawBetween(random, 0.5, 4);
  const ramp = (x: number): number => (x > 30 * round ? x : round * Math.log1p(Math.exp(x / round)));
  const raw = (duty: number): number =>
    slopes[0] * duty +
    (slopes[1] - slopes[0]) * ramp(duty - first) +
    (slopes[2] - slopes[1]) * ramp(duty - second);
  return (duty) => 1 + raw(duty) - raw(0);
}

function deadZonePower(random: Random, steepness: number): (duty: number) => number {
  const deadZone = drawBetween(random, 3, 45);
  const exponent = drawBetween(random, 1.1, 3);
  const rise = drawBetween(random, 1, 3) * steepness;
  return (duty) => 1 + rise * (Math.max(duty - deadZone, 0) / (100 - deadZone)) ** exponent;
}

function softLimit(random: Random, steepness: number): (duty: number) => number {
  const start = drawBetween(random, 0, 35);
  const reach = drawBetween(random, 18, 50) / steepness;
  const rise = drawBetween(random, 0.8, 2);
  return (duty) => 1 + rise * Math.tanh(Math.max(duty - start, 0) / reach);
}

function liftedFloor(random: Random, steepness: number): (duty: number) => number {
  const below = deadZonePower(random, steepness);
  const lift = drawBetween(random, 1.15, 1.8);
  const sharpness = drawBetween(random, 4, 20);
  return (duty) => (below(duty) ** sharpness + lift ** sharpness) ** (1 / sharpness);
}

/** Grows without bound towards a duty near the end of the range. */
function pole(random: Random, steepness: number): (duty: number) => number {
  const end = drawBetween(random, 102, 140) / Math.sqrt(steepness);
  const order = drawBetween(random, 1, 4);
  return (duty) => 1 / (1 - Math.min((duty / end) ** order, 0.8));
}

/** Straight pieces of ten points of duty whose slopes differ by up to eight times. */
function wavy(random: Random, steepness: number): (duty: number) => number {
  const first = drawBetween(random, 0, 30);
  const rises = Array.from({ length: 12 }, () => steepness * 0.06 * 8 ** random());
  return (duty) => {
    const position = Math.max(duty - first, 0) / 10;
    const whole = Math.floor(position);
    const passed = rises.slice(0, whole).reduce((sum, rise) => sum + rise, 0);
    return 1 + passed + (rises[whole] ?? 0) * (position - whole);
  };
}

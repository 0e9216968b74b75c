import { drawBetween } from '../random/draw-between.js';
import type { Random } from '../random/seeded-random.js';
import type { RiseDraw } from './rise-draw.js';

const clampShare = (share: number): number => Math.min(Math.max(share, 0), 1);

/**
 * Responses that the advice was first judged on. Some of its rules were settled with these in sight, so they are
 * development shapes now; see `JUDGEMENT_RISES` for those that nobody tunes with.
 * Ranges are reasoned: springs of 35 to 90 kPa, solenoids that do nothing below 5 to 35 % duty, turbochargers that
 * level off; common practice, no source.
 */
export const SEEN_RISES: Readonly<Record<string, RiseDraw>> = {
  'force balance': forceBalance,
  logistic,
  knee,
  saturating,
  'creep floor': creepFloor,
  'convex steep': convexSteep,
  'near linear': nearLinear,
};

/** peak = base / (1 - share of pressure bled away), nothing below the dead zone, levelling off at the turbo's limit. */
function forceBalance(random: Random, steepness: number): (duty: number) => number {
  const deadZone = drawBetween(random, 5, 35);
  const end = deadZone + (drawBetween(random, 88, 108) - deadZone) / steepness;
  const mostBled = drawBetween(random, 0.55, 0.85);
  const limit = drawBetween(random, 2.4, 4);
  return (duty) => {
    const bled = mostBled * clampShare((duty - deadZone) / (end - deadZone));
    const free = 1 / (1 - bled);
    return (free ** -8 + limit ** -8) ** (-1 / 8);
  };
}

function logistic(random: Random, steepness: number): (duty: number) => number {
  const middle = drawBetween(random, 35, 75);
  const width = drawBetween(random, 5, 15) / steepness;
  const rise = drawBetween(random, 0.7, 2.2);
  return (duty) => 1 + rise / (1 + Math.exp(-(duty - middle) / width));
}

/** Two straight lines with a corner. */
function knee(random: Random, steepness: number): (duty: number) => number {
  const corner = drawBetween(random, 15, 65);
  const before = drawBetween(random, 0.0005, 0.006);
  const after = drawBetween(random, 0.02, 0.055) * steepness;
  return (duty) => 1 + before * Math.min(duty, corner) + after * Math.max(duty - corner, 0);
}

function saturating(random: Random, steepness: number): (duty: number) => number {
  const start = drawBetween(random, 3, 30);
  const reach = drawBetween(random, 15, 45) / steepness;
  const rise = drawBetween(random, 0.8, 2.2);
  return (duty) => 1 + rise * (1 - Math.exp(-Math.max(duty - start, 0) / reach));
}

/** The gate cannot pass enough gas: boost creeps to a floor far above the spring, below which duty does nothing. */
function creepFloor(random: Random, steepness: number): (duty: number) => number {
  const below = forceBalance(random, steepness);
  const creep = drawBetween(random, 1.15, 1.7);
  return (duty) => Math.max(creep * (1 + 0.0004 * duty), below(duty));
}

function convexSteep(random: Random, steepness: number): (duty: number) => number {
  const reach = drawBetween(random, 9, 20) / steepness;
  const doubling = drawBetween(random, 55, 85);
  return (duty) => 1 + Math.exp((duty - doubling) / reach) - Math.exp(-doubling / reach);
}

function nearLinear(random: Random, steepness: number): (duty: number) => number {
  const slope = drawBetween(random, 0.009, 0.022) * steepness;
  const bend = drawBetween(random, -0.25, 0.25);
  return (duty) => 1 + slope * duty * (1 + (bend * (duty - 50)) / 100);
}

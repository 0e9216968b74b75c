import { drawBetween } from '../random/draw-between.js';
import { drawNormal } from '../random/draw-normal.js';
import type { Random } from '../random/seeded-random.js';
import { PULL_DEFAULTS, type PullOptions, type PullPlan } from './pull-plan.js';

/** One standard deviation of what differs from one pull to the next on the same road within minutes. */
export const PULL_SCATTER = {
  startRpm: 90,
  gradientPct: 0.25,
  supplyV: 0.2,
  heatSoakC: 1.5,
  pressureAbsKpa: 0.05,
  temperatureC: 0.6,
} as const;

/**
 * The same pull as a person would repeat it: a little earlier or later, up or down, warmer or cooler.
 *
 * Start speed, gradient, supply voltage, heat soak and air vary normally by `PULL_SCATTER`; where the solenoid is in
 * its period varies evenly. Spreads are reasoned (common practice, no source).
 *
 * @param options what was asked for
 * @param random stream to draw from
 */
export function varyPull(options: PullOptions, random: Random): PullPlan {
  const plan: PullPlan = { ...PULL_DEFAULTS, ...options };
  const around = (value: number, deviation: number): number => value + deviation * drawNormal(random);
  return {
    ...plan,
    startRpm: Math.max(1200, around(plan.startRpm, PULL_SCATTER.startRpm)),
    gradientPct: around(plan.gradientPct, PULL_SCATTER.gradientPct),
    supplyV: around(plan.supplyV, PULL_SCATTER.supplyV),
    heatSoakC: around(plan.heatSoakC, PULL_SCATTER.heatSoakC),
    ambient: {
      pressureAbsKpa: around(plan.ambient.pressureAbsKpa, PULL_SCATTER.pressureAbsKpa),
      temperatureC: around(plan.ambient.temperatureC, PULL_SCATTER.temperatureC),
    },
    solenoidPhaseRatio: drawBetween(random, 0, 1),
  };
}

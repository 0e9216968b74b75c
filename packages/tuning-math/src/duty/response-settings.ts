/**
 * What the posterior takes for granted before any pull; every figure is reasoned and then checked on practice
 * cars whose shapes were not used to choose it (docs/bench/advice.md). Logs are natural: 0.01 is about 1 %.
 */

/** Pull-to-pull scatter that cars can have, and how common each is. */
export const SCATTERS: readonly number[] = [0.004, 0.007, 0.011, 0.016, 0.023, 0.034];
export const SCATTER_SHARES: readonly number[] = [0.1, 0.18, 0.25, 0.25, 0.15, 0.07];

/** Departure of the whole level from a tabulated curve, log. */
export const LEVEL_DEPARTURE = 0.01;
/** Departure that changes slowly over duty, log, and the duty over which it changes, %. */
export const LOCAL_DEPARTURE = 0.015;
export const LOCAL_LENGTH = 9;
/** Shift of a fully heat-soaked car's peak, log, up or down. */
export const SOAK_SHIFT = 0.015;

/** A pull can be a false one: how often, and how far its reading then strays, log. */
export const FALSE_LOW_SHARE = 0.03;
export const FALSE_HIGH_SHARE = 0.007;
export const FALSE_STRAY = 0.09;

/** Small moves of a tabulated curve: along duty (%) and of its whole rise (log). */
export const SHIFT_SPREAD = 1.2;
export const RISE_SPREAD = 0.05;

/** Share of the curves whose floor may lie far from the base boost (creep, wrong or unknown base). */
export const WIDE_FLOOR_EVERY = 8;
/** A base boost that was measured holds within this, log. */
export const BASE_SPREAD = 0.05;
/** Floor over target where the base is unknown: centre and spread. */
export const UNKNOWN_FLOOR = 0.5;
export const UNKNOWN_FLOOR_SPREAD = 0.22;
/** Creep lifts the floor above the base by about this share of the target. */
export const CREEP_LIFT = 0.08;
export const CREEP_SPREAD = 0.13;

/** Curves drawn from the library for one decision. */
export const PARTICLE_COUNT = 700;

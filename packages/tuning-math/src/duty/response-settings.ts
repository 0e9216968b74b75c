/**
 * What the posterior takes for granted before any pull; every figure is reasoned and then checked on practice
 * cars whose shapes were not used to choose it (docs/bench/advice.md). Logs are natural: 0.01 is about 1 %.
 */

/** Pull-to-pull scatter that cars can have, and how common each is. */
export const SCATTERS: readonly number[] = [0.006, 0.01, 0.014, 0.018, 0.023, 0.032];
export const SCATTER_SHARES: readonly number[] = [0.07, 0.15, 0.2, 0.22, 0.22, 0.14];

/** Departure of the whole level from a tabulated curve, log. */
export const LEVEL_DEPARTURE = 0.01;
/** Departure that changes slowly over duty, log, and the duty over which it changes, %. */
export const LOCAL_DEPARTURE = 0.024;
export const LOCAL_LENGTH = 13;
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
export const WIDE_FLOOR_EVERY = 12;
/** A base boost that was measured holds within this, log. */
export const BASE_SPREAD = 0.04;
/** Floor over target where the base is unknown: centre and spread. */
export const UNKNOWN_FLOOR = 0.52;
export const UNKNOWN_FLOOR_SPREAD = 0.19;
/** Creep lifts the floor above the base by about this share of the target. */
export const CREEP_LIFT = 0.06;
export const CREEP_SPREAD = 0.1;

/**
 * How far boost rises from floor to full duty, over the floor, and how steeply at most (per point of duty, over five
 * points): centre and spread of the logarithm. A gate held shut makes some 1.7 to 4 times the spring's boost, and five
 * points of duty seldom a third of it; common practice, no source. The centres are settled on development cars.
 */
export const WHOLE_RISE = 2;
export const WHOLE_RISE_SPREAD = 0.5;
export const STEEPEST_RISE = 0.045;
export const STEEPEST_RISE_SPREAD = 0.5;

/** Curves drawn from the library for one decision. */
export const PARTICLE_COUNT = 700;
/** With more pulls than these the curve is known well; what is still to be learnt is its level and the scatter. */
export const MANY_PULLS = 8;

import type { Random } from '../random/seeded-random.js';

/**
 * Draws one response: mean peak over base boost (1 at zero duty, or above it where boost creeps), for duties of
 * 0 to 100 %. `steepness` above 1 squeezes the rise into fewer points of duty.
 */
export type RiseDraw = (random: Random, steepness: number) => (duty: number) => number;

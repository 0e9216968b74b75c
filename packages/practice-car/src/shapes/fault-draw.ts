import type { Random } from '../random/seeded-random.js';
import type { DrawnGoal } from './draw-goal.js';
import type { MeanPeakKpa } from './shape-car.js';

/** The healthy car that a fault comes upon. */
export interface FaultGround extends DrawnGoal {
  readonly meanKpa: MeanPeakKpa;
}

/** Mean peak with a fault, kPa gauge, given the healthy mean at that duty. */
export type FaultyMeanKpa = (healthyKpa: number) => number;

/** Draws what a fault does. */
export type FaultDraw = (random: Random, ground: FaultGround) => FaultyMeanKpa;

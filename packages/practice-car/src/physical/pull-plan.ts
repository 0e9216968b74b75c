import type { Fault } from '../faults/fault.js';
import type { Ambient } from './physical-car.js';
import { STEP_S } from './drive-plan.js';

/** How a pull is made; everything but the duty has a default, see `PULL_DEFAULTS`. */
export interface PullOptions {
  readonly dutyPct: number;
  readonly gateHoldPct?: number;
  readonly targetKpa?: number;
  /** 0 = open loop. */
  readonly correctionStrength?: number;
  readonly gear?: number;
  /** Engine speed from which the throttle is opened, and at which it is closed; null = 97 % of the rev limit. */
  readonly startRpm?: number;
  readonly endRpm?: number | null;
  readonly gradientPct?: number;
  readonly ambient?: Ambient;
  readonly heatSoakC?: number;
  readonly supplyV?: number;
  readonly overBoostCutKpa?: number | null;
  readonly faults?: readonly Fault[];
  readonly solenoidPhaseRatio?: number;
  readonly stepS?: number;
}

export type PullPlan = Required<PullOptions>;

export const PULL_DEFAULTS: Omit<PullPlan, 'dutyPct'> = {
  gateHoldPct: 0,
  targetKpa: 120,
  correctionStrength: 0,
  gear: 3,
  startRpm: 2200,
  endRpm: null,
  gradientPct: 0,
  ambient: { pressureAbsKpa: 101.325, temperatureC: 20 },
  heatSoakC: 0,
  supplyV: 13.8,
  overBoostCutKpa: null,
  faults: [],
  solenoidPhaseRatio: 0,
  stepS: STEP_S,
};

import type { VehiclePart } from './physical-car.js';
import { overallRatio } from './vehicle.js';

/** One thing the driver does; a drive is a list of them. */
export type DrivePhase =
  | { readonly kind: 'idle'; readonly durationS: number }
  | { readonly kind: 'reach'; readonly gear: number; readonly engineRpm: number }
  | { readonly kind: 'cruise'; readonly gear: number; readonly engineRpm: number; readonly durationS: number }
  | {
      readonly kind: 'pull';
      readonly gear: number;
      readonly endRpm: number;
      /** Engine speed at which the driver lifts for a moment; null = never. */
      readonly liftRpm: number | null;
    };

export interface DriverSees {
  readonly timeS: number;
  readonly engineRpm: number;
  readonly speedMps: number;
  readonly isFuelCut: boolean;
}

export interface DriverDoes {
  /** Where the foot wants the throttle, 0 to 1. */
  readonly throttleRatio: number;
  readonly brakeMps2: number;
  readonly gear: number;
  /** Which phase of the drive this is; the length of the list when the drive is over. */
  readonly phase: number;
}

export type Driver = (sees: DriverSees) => DriverDoes;

const ACCELERATE_RATIO = 0.3;
const BRAKING_MPS2 = 2.5;
const NEAR_MPS = 0.15;
const LIFT_S = 0.45;
const LIFT_RATIO = 0.12;
/** A driver gives up a pull that does not get there. */
const LONGEST_PULL_S = 20;
const LONGEST_REACH_S = 60;

/** Road speed that goes with an engine speed in a gear. */
export function speedInGearMps(vehicle: VehiclePart, gear: number, engineRpm: number): number {
  const ratio = overallRatio(vehicle, gear);
  return ratio === 0 ? 0 : ((engineRpm * Math.PI) / 30 / ratio) * vehicle.wheelRadiusM;
}

interface PhaseMemory {
  startS: number;
  liftS: number | null;
}

const holdSpeed = (wantedMps: number, speedMps: number): number =>
  Math.min(0.5, Math.max(0, 0.12 + 0.15 * (wantedMps - speedMps)));

function reach(
  phase: { gear: number },
  wantedMps: number,
  sees: DriverSees,
): Omit<DriverDoes, 'phase'> | null {
  const away = wantedMps - sees.speedMps;
  if (Math.abs(away) < NEAR_MPS) return null;
  if (away > 0)
    return { throttleRatio: Math.min(ACCELERATE_RATIO, 0.12 + 0.15 * away), brakeMps2: 0, gear: phase.gear };
  return { throttleRatio: 0, brakeMps2: Math.min(BRAKING_MPS2, -away * 2), gear: phase.gear };
}

type Pull = Extract<DrivePhase, { kind: 'pull' }>;

function pull(phase: Pull, sees: DriverSees, memory: PhaseMemory): Omit<DriverDoes, 'phase'> | null {
  if (sees.engineRpm >= phase.endRpm || sees.isFuelCut || sees.timeS - memory.startS > LONGEST_PULL_S)
    return null;
  if (phase.liftRpm !== null && memory.liftS === null && sees.engineRpm >= phase.liftRpm)
    memory.liftS = sees.timeS;
  const isLifting = memory.liftS !== null && sees.timeS - memory.liftS < LIFT_S;
  return { throttleRatio: isLifting ? LIFT_RATIO : 1, brakeMps2: 0, gear: phase.gear };
}

function act(
  phase: DrivePhase,
  sees: DriverSees,
  memory: PhaseMemory,
  vehicle: VehiclePart,
): Omit<DriverDoes, 'phase'> | null {
  const spentS = sees.timeS - memory.startS;
  if (phase.kind === 'idle')
    return spentS >= phase.durationS ? null : { throttleRatio: 0, brakeMps2: BRAKING_MPS2, gear: 0 };
  if (phase.kind === 'pull') return pull(phase, sees, memory);
  const wantedMps = speedInGearMps(vehicle, phase.gear, phase.engineRpm);
  if (phase.kind === 'reach') return spentS > LONGEST_REACH_S ? null : reach(phase, wantedMps, sees);
  if (spentS >= phase.durationS) return null;
  return { throttleRatio: holdSpeed(wantedMps, sees.speedMps), brakeMps2: 0, gear: phase.gear };
}

/**
 * A driver who follows a list of phases; asked at every step of the simulation what hands and feet do.
 *
 * @param phases in order
 * @param vehicle for the speeds that go with engine speeds
 */
export function followPhases(phases: readonly DrivePhase[], vehicle: VehiclePart): Driver {
  let current = 0;
  let memory: PhaseMemory = { startS: 0, liftS: null };
  return (sees) => {
    for (;;) {
      const phase = phases[current];
      if (phase === undefined) return { throttleRatio: 0, brakeMps2: 0, gear: 0, phase: current };
      const done = act(phase, sees, memory, vehicle);
      if (done !== null) return { ...done, phase: current };
      current += 1;
      memory = { startS: sees.timeS, liftS: null };
    }
  };
}

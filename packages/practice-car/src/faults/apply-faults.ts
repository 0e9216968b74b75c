import type { PhysicalCar } from '../physical/physical-car.js';
import { overallRatio } from '../physical/vehicle.js';
import type { Fault, FaultKind } from './fault.js';
import { type Damage, NO_DAMAGE } from './damage.js';

export interface FaultyCar {
  readonly car: PhysicalCar;
  readonly damage: Damage;
}

type Change = (faulty: FaultyCar, severityRatio: number) => FaultyCar;

/** Hole in the charge pipe, up to that of a hose half off its spigot. */
const LARGEST_LEAK_M2 = 1.4e-4;

const gate = (faulty: FaultyCar, change: Partial<PhysicalCar['gate']>): FaultyCar => ({
  ...faulty,
  car: { ...faulty.car, gate: { ...faulty.car.gate, ...change } },
});

const damaged = (faulty: FaultyCar, change: Partial<Damage>): FaultyCar => ({
  ...faulty,
  damage: { ...faulty.damage, ...change },
});

/** Mean pressure on the pistons that a boosted engine makes without effort, and the gear that grip is judged in. */
const USUAL_MEP_PA = 1.2e6;
const JUDGED_GEAR = 4;

/** Drive force of a usual pull in fourth gear, so that a slippery road is slippery for every car. */
function usualDriveN(car: PhysicalCar): number {
  const torque = (USUAL_MEP_PA * car.engine.displacementM3) / (4 * Math.PI);
  return (torque * overallRatio(car.vehicle, JUDGED_GEAR)) / car.vehicle.wheelRadiusM;
}

/** What each fault does to the car's figures. The others act on the driver or on the sensors. */
const CHANGES: Partial<Record<FaultKind, Change>> = {
  leak: (faulty, severity) => damaged(faulty, { leakM2: severity * LARGEST_LEAK_M2 }),
  'actuator-line-off': (faulty) => damaged(faulty, { isActuatorLineOff: true }),
  'solenoid-line-off': (faulty) => damaged(faulty, { isSolenoidLineOff: true }),
  'dead-solenoid': (faulty) => damaged(faulty, { isSolenoidDead: true }),
  'sticking-gate': (faulty, severity) =>
    gate(faulty, { frictionN: faulty.car.gate.frictionN + severity * 0.45 * faulty.car.gate.preloadN }),
  'boost-creep': (faulty, severity) => gate(faulty, { portM: faulty.car.gate.portM * (1 - 0.6 * severity) }),
  'weak-spring': (faulty, severity) =>
    gate(faulty, { preloadN: faulty.car.gate.preloadN * (1 - 0.5 * severity) }),
  'wheel-slip': (faulty, severity) => {
    const { vehicle } = faulty.car;
    const gripN = Math.min(vehicle.gripN, (1 - 0.35 * severity) * usualDriveN(faulty.car));
    return { ...faulty, car: { ...faulty.car, vehicle: { ...vehicle, gripN } } };
  },
  'lazy-solenoid': (faulty, severity) => {
    const { solenoid } = faulty.car;
    const openS = solenoid.openS + (0.45 * severity) / solenoid.frequencyHz;
    return { ...faulty, car: { ...faulty.car, solenoid: { ...solenoid, openS } } };
  },
};

/**
 * The car as its faults have left it at a moment of the run.
 *
 * @param car the sound car; not changed
 * @param faults what is wrong
 * @param timeS moment of the run; faults that start later are left out
 */
export function applyFaults(car: PhysicalCar, faults: readonly Fault[], timeS: number): FaultyCar {
  let faulty: FaultyCar = { car, damage: NO_DAMAGE };
  for (const fault of faults)
    if (fault.fromS <= timeS) faulty = CHANGES[fault.kind]?.(faulty, fault.severityRatio) ?? faulty;
  return faulty;
}

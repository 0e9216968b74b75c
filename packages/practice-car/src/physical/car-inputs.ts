import type { Damage } from '../faults/damage.js';
import type { LineWays } from './actuator-lines.js';
import type { Ambient, PhysicalCar } from './physical-car.js';

/** What acts on the car from outside between two steps: driver, controller, air, road and faults. */
export interface CarInputs {
  car: PhysicalCar;
  damage: Damage;
  ambient: Ambient;
  gradientPct: number;
  /** Throttle at `sinceS`, and how fast it moves from there. */
  throttleRatio: number;
  throttleRatioPerS: number;
  sinceS: number;
  /** Whether the solenoid's valve is open (energised and past its dead time). */
  isValveOpen: boolean;
  /** What that means for the actuator's lines. */
  ways: LineWays;
  fuelRatio: number;
  brakeMps2: number;
  /** Ratio the gearbox is moving to, and whether the clutch passes torque. */
  wantedRatio: number;
  isClutchClosed: boolean;
}

/** Throttle position at a moment, 0 closed to 1 open. */
export function throttleAt(inputs: CarInputs, timeS: number): number {
  const ratio = inputs.throttleRatio + inputs.throttleRatioPerS * (timeS - inputs.sinceS);
  return Math.min(1, Math.max(0, ratio));
}

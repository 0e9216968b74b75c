import { GRAVITY_MPS2 } from './gas.js';
import type { VehiclePart } from './physical-car.js';

/**
 * Force that road and air put against the car, F = A + B v + C v^2 + m g sin(atan(gradient)).
 *
 * @param vehicle mass and road-load coefficients
 * @param speedMps road speed, at least 0
 * @param gradientPct rise over run, in per cent; positive uphill
 * @returns newtons
 * Source: SAE J1263 / J2263 and 40 CFR 1066 subpart D (form of the coast-down fit).
 */
export function roadLoadN(vehicle: VehiclePart, speedMps: number, gradientPct: number): number {
  const slope = gradientPct / 100;
  const climb = (vehicle.massKg * GRAVITY_MPS2 * slope) / Math.sqrt(1 + slope * slope);
  return (
    vehicle.roadLoadN +
    vehicle.roadLoadNPerMps * speedMps +
    vehicle.roadLoadNPerMps2 * speedMps * speedMps +
    climb
  );
}

/**
 * Mass that the engine feels, over the car's mass: rotating parts count more in short gears.
 *
 * @param overallRatio engine turns for each wheel turn; 0 when nothing is driven
 * @returns 1 + 0.04 + 0.0025 N^2 in gear, exactly 1 out of gear
 * Source: Gillespie, Fundamentals of Vehicle Dynamics, chapter 2 (from memory).
 */
export function massFactor(overallRatio: number): number {
  return overallRatio === 0 ? 1 : 1.04 + 0.0025 * overallRatio * overallRatio;
}

/** Engine turns for each wheel turn in a gear; 0 for neutral (gear 0). */
export function overallRatio(vehicle: VehiclePart, gear: number): number {
  const ratio = vehicle.gearRatios[gear - 1];
  return ratio === undefined ? 0 : ratio * vehicle.finalDriveRatio;
}

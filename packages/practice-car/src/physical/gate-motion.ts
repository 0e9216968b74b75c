import type { GatePart } from './physical-car.js';

export interface GatePressures {
  /** Gauge pressure under the diaphragm, which lifts the flap. */
  readonly liftPa: number;
  /** Gauge pressure above it, which holds the flap shut; 0 where there is no second chamber. */
  readonly shutPa: number;
  /** Exhaust pressure before the turbine less behind it: it pushes the flap open. */
  readonly flapPa: number;
}

/**
 * Force that opens the gate: diaphragm and exhaust against the spring, before friction.
 *
 * F = (lift - shut) A + flap * A_port * lever - (preload + rate * rod). It is zero at the crack point.
 *
 * @param gate the gate
 * @param pressures gauge, Pa
 * @param rodM rod stroke, 0 = shut
 * @returns newtons, positive opens
 * Source: quasi-static balance of the parts (generic mechanics).
 */
export function gateForceN(gate: GatePart, pressures: GatePressures, rodM: number): number {
  const portM2 = (Math.PI / 4) * gate.portM * gate.portM;
  const diaphragm = (pressures.liftPa - pressures.shutPa) * gate.diaphragmM2;
  return diaphragm + pressures.flapPa * portM2 * gate.leverRatio - gate.preloadN - gate.rateNPerM * rodM;
}

/**
 * Speed of the gate rod: viscous, after dry friction has had its share; it stops at both ends of its stroke.
 *
 * @param gate the gate
 * @param forceN from `gateForceN`
 * @param rodM rod stroke
 * @returns m/s
 */
export function gateSpeedMps(gate: GatePart, forceN: number, rodM: number): number {
  const free = Math.abs(forceN) - gate.frictionN;
  if (free <= 0) return 0;
  const speed = (Math.sign(forceN) * free) / gate.dampingNSPerM;
  if (rodM <= 0 && speed < 0) return 0;
  if (rodM >= gate.strokeM && speed > 0) return 0;
  return speed;
}

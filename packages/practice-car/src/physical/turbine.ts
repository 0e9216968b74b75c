import { EXHAUST_CHOKED, EXHAUST_CP, EXHAUST_EXPONENT } from './gas.js';
import type { GatePart, TurbinePart } from './physical-car.js';

export interface ExhaustFlow {
  readonly flowKgPerS: number;
  readonly temperatureK: number;
  readonly ambientPa: number;
}

export interface TurbinePoint {
  readonly inletPa: number;
  readonly outletPa: number;
  readonly turbineFlowKgPerS: number;
  readonly gateFlowKgPerS: number;
  readonly powerW: number;
}

/** Blade speed over spouting speed at best efficiency. Common practice for radial turbines. */
const BEST_SPEED_RATIO = 0.65;

/**
 * Flow capacity of the gate at a rod position, in the turbine's unit (kg/s * K^0.5 / Pa).
 *
 * The curtain about the flap, pi D lift, until it meets the port, pi/4 D^2, joined smoothly.
 *
 * @param gate the gate
 * @param rodM rod stroke, 0 = shut
 * @returns never below the leak of the shut flap
 */
export function gateCapacity(gate: GatePart, rodM: number): number {
  const portM2 = (Math.PI / 4) * gate.portM * gate.portM;
  const lift = gate.leverRatio * Math.max(0, rodM);
  const areaM2 = portM2 * Math.tanh((4 * lift) / gate.portM);
  return (gate.dischargeRatio * areaM2 + gate.leakM2) * EXHAUST_CHOKED;
}

/**
 * Pressure before the turbine, how the exhaust divides between turbine and gate, and the turbine's power.
 *
 * Stodola's ellipse, m sqrt(T) / p3 = K sqrt(1 - (p4/p3)^2), for both ways side by side, so that
 * p3^2 = p4^2 + T3 (m / (Kt + Kg))^2 in closed form. Efficiency is the parabola over blade speed ratio
 * u/c with its best at 0.65; written so that it stays finite when the expansion vanishes.
 *
 * @param turbine the turbine
 * @param gateCapacityKgK05PerSPa from `gateCapacity`
 * @param exhaust flow, temperature and the open air's pressure
 * @param shaftRadPerS shaft speed
 * Source: Stodola's cone law; parabola: Watson and Janota, Turbocharging the Internal Combustion Engine (from memory).
 */
export function turbinePoint(
  turbine: TurbinePart,
  gateCapacityKgK05PerSPa: number,
  exhaust: ExhaustFlow,
  shaftRadPerS: number,
): TurbinePoint {
  const outletPa =
    exhaust.ambientPa + turbine.tailpipeLossPaS2PerKg2 * exhaust.flowKgPerS * exhaust.flowKgPerS;
  const capacity = turbine.capacityKgK05PerSPa + gateCapacityKgK05PerSPa;
  const rise = exhaust.flowKgPerS / capacity;
  const inletPa = Math.sqrt(outletPa * outletPa + exhaust.temperatureK * rise * rise);
  const turbineFlowKgPerS = (exhaust.flowKgPerS * turbine.capacityKgK05PerSPa) / capacity;
  const drop = EXHAUST_CP * exhaust.temperatureK * (1 - (outletPa / inletPa) ** EXHAUST_EXPONENT);
  const blade = (shaftRadPerS * turbine.wheelM) / 2 / BEST_SPEED_RATIO;
  const spouting = Math.sqrt(2 * Math.max(0, drop));
  const workJPerKg = turbine.efficiencyMaxRatio * (blade * spouting - (blade * blade) / 2);
  return {
    inletPa,
    outletPa,
    turbineFlowKgPerS,
    gateFlowKgPerS: exhaust.flowKgPerS - turbineFlowKgPerS,
    powerW: turbineFlowKgPerS * workJPerKg,
  };
}

import { AIR_CHOKED, AIR_R } from './gas.js';
import type { EnginePart } from './physical-car.js';

export interface EngineInlet {
  readonly chargePa: number;
  readonly chargeK: number;
  /** 0 = closed (idle stop), 1 = wide open. */
  readonly throttleRatio: number;
}

export interface EngineBreath {
  readonly manifoldPa: number;
  readonly airKgPerS: number;
}

/** Stoichiometric air to fuel ratio and heat of petrol: with surplus fuel the air decides. Source: Heywood, appendix D (rounded). */
const HEAT_JPER_KG_AIR = 43.0e6 / 14.6;
/** Full load is run rich. Common practice. */
export const AIR_FUEL_RATIO = 12;
/** Share of the throttle's area that the idle stop leaves. */
const IDLE_STOP_RATIO = 0.006;
/** Burnt gas left in the cylinders: below this manifold pressure an engine draws nothing. */
const RESIDUAL_PA = 10_000;
/** Filling is quoted for breathing from the open air. */
const QUOTED_PA = 101_325;
/** How fast exhaust heats up with load, in intake atmospheres. */
const EXHAUST_LOAD_RATIO = 1.1;

/** Filling of the cylinders at a speed: a parabola about its best, never below 0.4. */
export function volumetricRatio(engine: EnginePart, engineRpm: number): number {
  const away = engineRpm / engine.volumetricPeakRpm - 1;
  return Math.max(0.4, engine.volumetricPeakRatio * (1 - engine.volumetricFallRatio * away * away));
}

/**
 * Manifold pressure and air flow, from the charge pressure before the throttle.
 *
 * Speed-density behind the throttle, m = k (p_m - p_0) with k = VE V (N/120) / (R T) for p_0 = 0; a residual pressure
 * p_0 of 10 kPa, with k scaled so that the flow at 101.325 kPa stays VE's, keeps a closed throttle from drawing a perfect
 * vacuum. It meets the ellipse law of the throttle, m = K sqrt(p_c^2 - p_m^2), in closed form, no iteration:
 * p_m = [k^2 p_0 + K sqrt((K^2 + k^2) p_c^2 - k^2 p_0^2)] / (K^2 + k^2).
 *
 * @param engine the engine
 * @param engineRpm crankshaft speed, above 0
 * @param inlet charge pressure and temperature, and the throttle
 * Source: Heywood, Internal Combustion Engine Fundamentals, chapter 6 (speed-density).
 */
export function engineBreath(engine: EnginePart, engineRpm: number, inlet: EngineInlet): EngineBreath {
  const open = 1 - Math.cos((Math.PI / 2) * inlet.throttleRatio);
  const areaM2 = engine.throttleM2 * (IDLE_STOP_RATIO + (1 - IDLE_STOP_RATIO) * open);
  const throttle = (areaM2 * AIR_CHOKED) / Math.sqrt(inlet.chargeK);
  const swept = (volumetricRatio(engine, engineRpm) * engine.displacementM3 * engineRpm) / 120;
  const pump = swept / (AIR_R * inlet.chargeK) / (1 - RESIDUAL_PA / QUOTED_PA);
  const sum = throttle * throttle + pump * pump;
  const root = Math.sqrt(sum * inlet.chargePa * inlet.chargePa - (pump * RESIDUAL_PA) ** 2);
  const manifoldPa = (pump * pump * RESIDUAL_PA + throttle * root) / sum;
  return { manifoldPa, airKgPerS: Math.max(0, pump * (manifoldPa - RESIDUAL_PA)) };
}
/**
 * Temperature of the exhaust before the turbine: it rises with load from idle to full load, a little with speed,
 * and falls towards the charge air when the fuel is cut.
 *
 * @param engine the engine
 * @param manifoldPa absolute
 * @param engineRpm crankshaft speed
 * @param fuelRatio 1 = fuelled, 0 = cut
 */
export function exhaustK(
  engine: EnginePart,
  manifoldPa: number,
  engineRpm: number,
  fuelRatio: number,
): number {
  const load = 1 - Math.exp((-EXHAUST_LOAD_RATIO * manifoldPa) / 101325);
  const speed = 0.9 + 0.1 * Math.min(1, engineRpm / engine.revLimitRpm);
  const fuelled = engine.exhaustIdleK + (engine.exhaustFullK * speed - engine.exhaustIdleK) * load;
  return fuelRatio * fuelled + (1 - fuelRatio) * 0.55 * fuelled;
}

/**
 * Torque at the crankshaft: work from the air burnt, less friction, less the pumping against exhaust pressure.
 *
 * @param engine the engine
 * @param breath from `engineBreath`
 * @param running speed, exhaust pressure before the turbine (absolute) and whether the fuel flows (1) or is cut (0)
 * @returns N m, negative when the engine brakes
 */
export function engineTorqueNm(
  engine: EnginePart,
  breath: EngineBreath,
  running: { readonly engineRpm: number; readonly exhaustPa: number; readonly fuelRatio: number },
): number {
  const radPerS = (running.engineRpm * 2 * Math.PI) / 60;
  const work = breath.airKgPerS * HEAT_JPER_KG_AIR * engine.indicatedEfficiencyRatio * running.fuelRatio;
  const losses =
    (engine.frictionMepPa + running.exhaustPa - breath.manifoldPa) * (engine.displacementM3 / (4 * Math.PI));
  return work / radPerS - losses;
}

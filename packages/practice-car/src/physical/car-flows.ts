import { AIR_CP, AIR_CV, AIR_R } from './gas.js';
import { compressorPoint, type CompressorPoint } from './compressor.js';
import { AIR_FUEL_RATIO, engineBreath, exhaustK, type EngineBreath } from './engine.js';
import { orificeFlow } from './orifice-flow.js';
import { gateCapacity, turbinePoint, type TurbinePoint } from './turbine.js';
import { type CarInputs, throttleAt } from './car-inputs.js';
import { readState, STATE } from './car-state.js';

/** Everything that flows in a car at one moment, worked out from its state. */
export interface CarFlows {
  readonly engineRpm: number;
  readonly ambientPa: number;
  readonly ambientK: number;
  readonly chargePa: number;
  readonly chargeK: number;
  readonly compressorOutPa: number;
  readonly breath: EngineBreath;
  readonly compressor: CompressorPoint;
  readonly turbine: TurbinePoint;
  readonly exhaustTemperatureK: number;
  /** Air through a compressor that turns too slowly to hold the flow back or help it. */
  readonly throughKgPerS: number;
  readonly leakKgPerS: number;
  readonly recirculatedKgPerS: number;
  /** After the charge cooler, and the heat that the cooler takes out. */
  readonly coolerOutK: number;
  readonly coolerW: number;
  readonly throttleRatio: number;
}

/** Pressure across a shut throttle at which the recirculation valve starts to open, and is fully open. */
const RECIRCULATION_START_PA = 45_000;
const RECIRCULATION_SPAN_PA = 30_000;
/** The wheel's inlet as an opening for air that is drawn through it. */
const THROUGH_AREA_RATIO = 0.2;
const IDLE_BLEND_RPM = 60;

/** Crankshaft speed: the wheels' through the gears, or idle behind a slipping clutch, smoothly joined. */
function engineSpeedRpm(state: Float64Array, inputs: CarInputs): number {
  const { wheelRadiusM } = inputs.car.vehicle;
  const wheel = readState(state, STATE.speedMps) * (1 + readState(state, STATE.slipRatio));
  const geared = ((wheel * readState(state, STATE.driveRatio)) / wheelRadiusM) * (30 / Math.PI);
  const { idleRpm } = inputs.car.engine;
  const above = geared - idleRpm;
  return (geared + idleRpm + Math.sqrt(above * above + IDLE_BLEND_RPM * IDLE_BLEND_RPM)) / 2;
}

function recirculated(inputs: CarInputs, chargePa: number, manifoldPa: number, chargeK: number): number {
  const over = (chargePa - manifoldPa - RECIRCULATION_START_PA) / RECIRCULATION_SPAN_PA;
  if (over <= 0) return 0;
  const areaM2 = inputs.car.charge.recirculationM2 * Math.min(1, over);
  return Math.max(0, orificeFlow(areaM2, chargePa, inputs.ambient.pressureAbsKpa * 1000, chargeK));
}

/**
 * Pressures, temperatures, mass flows and powers everywhere in the car, in closed form from its state.
 *
 * Filter and cooler losses use the engine's flow, which equals the compressor's when the charge pressure stands.
 *
 * @param state state vector, see `STATE`
 * @param inputs driver, controller, air, road, faults
 * @param timeS moment, for the moving throttle
 */
export function carFlows(state: Float64Array, inputs: CarInputs, timeS: number): CarFlows {
  const { car } = inputs;
  const ambientPa = inputs.ambient.pressureAbsKpa * 1000;
  const ambientK = inputs.ambient.temperatureC + 273.15;
  const chargeKg = readState(state, STATE.chargeKg);
  const chargeK = readState(state, STATE.chargeJ) / (chargeKg * AIR_CV);
  const chargePa = (chargeKg * AIR_R * chargeK) / car.charge.volumeM3;
  const engineRpm = engineSpeedRpm(state, inputs);
  const throttleRatio = throttleAt(inputs, timeS);
  const breath = engineBreath(car.engine, engineRpm, { chargePa, chargeK, throttleRatio });
  const exhaustTemperatureK = exhaustK(car.engine, breath.manifoldPa, engineRpm, inputs.fuelRatio);
  const shaftRadPerS = readState(state, STATE.shaftRadPerS);
  const exhaustKgPerS = breath.airKgPerS * (1 + inputs.fuelRatio / AIR_FUEL_RATIO);
  const turbine = turbinePoint(
    car.turbine,
    gateCapacity(car.gate, readState(state, STATE.rodM)),
    { flowKgPerS: exhaustKgPerS, temperatureK: exhaustTemperatureK, ambientPa },
    shaftRadPerS,
  );
  const airSquared = breath.airKgPerS * breath.airKgPerS;
  const inletPa = ambientPa - car.compressor.filterLossPaS2PerKg2 * airSquared;
  const compressorOutPa = chargePa + car.charge.coolerLossPaS2PerKg2 * airSquared;
  const inlet = { pressurePa: inletPa, temperatureK: ambientK };
  const compressor = compressorPoint(car.compressor, inlet, compressorOutPa, shaftRadPerS);
  const throughM2 = THROUGH_AREA_RATIO * car.compressor.wheelM * car.compressor.wheelM;
  const cooling =
    car.charge.coolerEffectivenessRatio * (compressor.outletK - readState(state, STATE.coolerK));
  return {
    engineRpm,
    ambientPa,
    ambientK,
    chargePa,
    chargeK,
    compressorOutPa,
    breath,
    compressor,
    turbine,
    exhaustTemperatureK,
    throughKgPerS: Math.max(0, orificeFlow(throughM2, inletPa, compressorOutPa, ambientK)),
    leakKgPerS: orificeFlow(inputs.damage.leakM2, chargePa, ambientPa, chargeK),
    recirculatedKgPerS: recirculated(inputs, chargePa, breath.manifoldPa, chargeK),
    coolerOutK: compressor.outletK - cooling,
    coolerW: Math.max(0, compressor.flowKgPerS) * AIR_CP * cooling,
    throttleRatio,
  };
}

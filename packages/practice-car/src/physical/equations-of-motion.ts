import { AIR_CP } from './gas.js';
import { lineRates } from './actuator-lines.js';
import { carFlows, type CarFlows } from './car-flows.js';
import type { CarInputs } from './car-inputs.js';
import { readState, STATE } from './car-state.js';
import { engineTorqueNm } from './engine.js';
import { gateForceN, gateSpeedMps } from './gate-motion.js';
import type { Derivative } from './integrate-rk4.js';
import { massFactor, roadLoadN } from './vehicle.js';

const GEAR_CHANGE_S = 0.08;
const SLIP_SETTLES_S = 0.08;
/** Slip for each share of drive force beyond the grip; a spinning wheel runs away no further than the cap. */
const SLIP_PER_EXCESS_RATIO = 0.5;
const SLIP_CAP_RATIO = 0.4;

/** Charge air: first law for an open volume, dm = sum(m), dU = sum(m cp T). */
function chargeRates(flows: CarFlows, ratesOut: Float64Array): void {
  const out = flows.breath.airKgPerS + flows.leakKgPerS + flows.recirculatedKgPerS;
  const blown = flows.compressor.flowKgPerS;
  const blownK = blown > 0 ? flows.coolerOutK : flows.chargeK;
  ratesOut[STATE.chargeKg] = blown + flows.throughKgPerS - out;
  ratesOut[STATE.chargeJ] =
    AIR_CP * (blown * blownK + flows.throughKgPerS * flows.ambientK - out * flows.chargeK);
}

/** Turbine drives, compressor and bearings brake: J w dw/dt = P. */
function shaftRate(state: Float64Array, inputs: CarInputs, flows: CarFlows): number {
  const shaft = readState(state, STATE.shaftRadPerS);
  const { inertiaKgM2, frictionNmS } = inputs.car.shaft;
  const torque =
    (flows.turbine.powerW - flows.compressor.powerW) / Math.max(100, shaft) - frictionNmS * shaft;
  return torque / inertiaKgM2;
}

function coolerRate(state: Float64Array, inputs: CarInputs, flows: CarFlows): number {
  const { charge } = inputs.car;
  const away = charge.coolerStillWPerK + charge.coolerMovingWPerKPerMps * readState(state, STATE.speedMps);
  const lost = away * (readState(state, STATE.coolerK) - flows.ambientK);
  return (flows.coolerW - lost) / charge.coolerHeatJPerK;
}

/** Drive force at the tread, before grip limits it. */
export function driveForceN(state: Float64Array, inputs: CarInputs, flows: CarFlows): number {
  if (!inputs.isClutchClosed) return 0;
  const { vehicle, engine } = inputs.car;
  const torque = engineTorqueNm(engine, flows.breath, {
    engineRpm: flows.engineRpm,
    exhaustPa: flows.turbine.inletPa,
    fuelRatio: inputs.fuelRatio,
  });
  const efficiency = torque > 0 ? vehicle.drivelineEfficiencyRatio : 1 / vehicle.drivelineEfficiencyRatio;
  return (torque * efficiency * readState(state, STATE.driveRatio)) / vehicle.wheelRadiusM;
}

function roadRates(state: Float64Array, inputs: CarInputs, flows: CarFlows, ratesOut: Float64Array): void {
  const { vehicle } = inputs.car;
  const speed = readState(state, STATE.speedMps);
  const drive = driveForceN(state, inputs, flows);
  const excess = Math.max(0, drive / vehicle.gripN - 1);
  const wantedSlip = Math.min(SLIP_CAP_RATIO, SLIP_PER_EXCESS_RATIO * excess);
  const passed = Math.min(drive, vehicle.gripN) - roadLoadN(vehicle, speed, inputs.gradientPct);
  const mass = vehicle.massKg * massFactor(inputs.wantedRatio);
  const rate = passed / mass - inputs.brakeMps2;
  ratesOut[STATE.speedMps] = speed <= 0 && rate < 0 ? 0 : rate;
  ratesOut[STATE.slipRatio] = (wantedSlip - readState(state, STATE.slipRatio)) / SLIP_SETTLES_S;
  ratesOut[STATE.driveRatio] = (inputs.wantedRatio - readState(state, STATE.driveRatio)) / GEAR_CHANGE_S;
}

/**
 * The right-hand side of a car's equations of motion, for the integrator.
 *
 * @param inputs read afresh at every call; constant between two steps but for the moving throttle
 */
export function equationsOfMotion(inputs: CarInputs): Derivative {
  return (timeS, state, ratesOut) => {
    const flows = carFlows(state, inputs, timeS);
    const { gate, solenoid } = inputs.car;
    chargeRates(flows, ratesOut);
    ratesOut[STATE.shaftRadPerS] = shaftRate(state, inputs, flows);
    const liftPa = readState(state, STATE.liftPa);
    const shutPa = readState(state, STATE.shutPa);
    const lines = { sourcePa: flows.compressorOutPa, ambientPa: flows.ambientPa, liftPa, shutPa };
    const line = lineRates(solenoid.lineM3, inputs.ways, lines);
    ratesOut[STATE.liftPa] = line.liftPaPerS;
    ratesOut[STATE.shutPa] = line.shutPaPerS;
    const rodM = readState(state, STATE.rodM);
    const force = gateForceN(
      gate,
      {
        liftPa: liftPa - flows.ambientPa,
        shutPa: shutPa - flows.ambientPa,
        flapPa: flows.turbine.inletPa - flows.turbine.outletPa,
      },
      rodM,
    );
    ratesOut[STATE.rodM] = gateSpeedMps(gate, force, rodM);
    ratesOut[STATE.coolerK] = coolerRate(state, inputs, flows);
    roadRates(state, inputs, flows, ratesOut);
  };
}

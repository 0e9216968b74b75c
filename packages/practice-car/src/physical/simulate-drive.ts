import { applyFaults } from '../faults/apply-faults.js';
import { lineWays } from './actuator-lines.js';
import { controlBoost, type BoostControl } from './boost-control.js';
import { carFlows } from './car-flows.js';
import type { CarInputs } from './car-inputs.js';
import { readState, STATE, STATE_SIZE } from './car-state.js';
import type { DriveConditions, DriveLeg } from './drive-plan.js';
import { type Driver, followPhases, speedInGearMps } from './driver.js';
import { equationsOfMotion } from './equations-of-motion.js';
import { AIR_CV, AIR_R } from './gas.js';
import { rungeKutta4, type Stepper } from './integrate-rk4.js';
import type { PhysicalCar } from './physical-car.js';
import { pulseSolenoid, type Solenoid, type ValveEdge, valveTiming } from './solenoid-edges.js';
import { recordTrace, type Trace, type TraceRecorder } from './trace.js';
import { overallRatio } from './vehicle.js';

const THROTTLE_MOVES_S = 0.15;
const LONGEST_DRIVE_S = 1800;
const REV_CUT_SPAN_RPM = 80;
const CUT_RELEASE_KPA = 25;
const CLUTCH_CLOSES_RATIO = 0.02;
const SHAFT_START_RADPERS = 2000;

interface Run {
  readonly car: PhysicalCar;
  readonly conditions: DriveConditions;
  readonly inputs: CarInputs;
  readonly state: Float64Array;
  readonly step: Stepper;
  readonly driver: Driver;
  readonly legs: readonly DriveLeg[];
  readonly controls: readonly BoostControl[];
  readonly legOfPhase: readonly number[];
  readonly recorder: TraceRecorder;
  timeS: number;
  dutyPct: number;
  gear: number;
  phase: number;
  isCut: boolean;
}

function startState(car: PhysicalCar, conditions: DriveConditions): Float64Array {
  const state = new Float64Array(STATE_SIZE);
  const ambientK = conditions.ambient.temperatureC + 273.15;
  const ambientPa = conditions.ambient.pressureAbsKpa * 1000;
  const chargeK = ambientK + 0.5 * conditions.heatSoakC;
  const chargeKg = (ambientPa * car.charge.volumeM3) / (AIR_R * chargeK);
  state[STATE.chargeKg] = chargeKg;
  state[STATE.chargeJ] = chargeKg * AIR_CV * chargeK;
  state[STATE.shaftRadPerS] = SHAFT_START_RADPERS;
  state[STATE.liftPa] = ambientPa;
  state[STATE.shutPa] = ambientPa;
  state[STATE.coolerK] = ambientK + conditions.heatSoakC;
  state[STATE.speedMps] = speedInGearMps(car.vehicle, conditions.startGear, conditions.startRpm);
  state[STATE.driveRatio] = overallRatio(car.vehicle, conditions.startGear);
  return state;
}

function legNow(run: Run): DriveLeg | undefined {
  return run.legs[run.legOfPhase[run.phase] ?? run.legs.length - 1];
}

/** Fuel: tapered off over the rev limit, cut at once above the over-boost cut until boost has fallen well below. */
function setFuel(run: Run, boostKpa: number, engineRpm: number): void {
  const cutKpa = run.conditions.overBoostCutKpa;
  if (cutKpa !== null) run.isCut = boostKpa > (run.isCut ? cutKpa - CUT_RELEASE_KPA : cutKpa);
  const limit = run.car.engine.revLimitRpm;
  const rev = Math.min(1, Math.max(0, (limit + REV_CUT_SPAN_RPM - engineRpm) / REV_CUT_SPAN_RPM));
  run.inputs.fuelRatio = run.isCut ? 0 : rev;
}

/** Looks at the car, writes the row of this moment, and lets driver and limits act for the step to come. */
function observe(run: Run, stepS: number): void {
  const { inputs, state } = run;
  const flows = carFlows(state, inputs, run.timeS);
  const boostKpa = (flows.breath.manifoldPa - flows.ambientPa) / 1000;
  const speedMps = readState(state, STATE.speedMps);
  setFuel(run, boostKpa, flows.engineRpm);
  const does = run.driver({ timeS: run.timeS, engineRpm: flows.engineRpm, speedMps, isFuelCut: run.isCut });
  run.phase = does.phase;
  run.gear = does.gear;
  inputs.gradientPct = legNow(run)?.gradientPct ?? 0;
  inputs.throttleRatio = flows.throttleRatio;
  inputs.sinceS = run.timeS;
  const fastest = 1 / THROTTLE_MOVES_S;
  const wanted = (does.throttleRatio - flows.throttleRatio) / stepS;
  inputs.throttleRatioPerS = Math.min(fastest, Math.max(-fastest, wanted));
  inputs.brakeMps2 = does.brakeMps2;
  inputs.wantedRatio = overallRatio(run.car.vehicle, does.gear);
  const off = Math.abs(readState(state, STATE.driveRatio) - inputs.wantedRatio);
  inputs.isClutchClosed = inputs.wantedRatio > 0 && off < CLUTCH_CLOSES_RATIO * inputs.wantedRatio;
  run.recorder.add({
    timeS: run.timeS,
    boostKpa,
    chargeAbsKpa: flows.chargePa / 1000,
    engineRpm: flows.engineRpm,
    speedMps,
    wheelMps: speedMps * (1 + readState(state, STATE.slipRatio)),
    throttleRatio: flows.throttleRatio,
    dutyPct: run.dutyPct,
    chargeC: flows.chargeK - 273.15,
    coolerC: readState(state, STATE.coolerK) - 273.15,
    shaftRadPerS: readState(state, STATE.shaftRadPerS),
    rodM: readState(state, STATE.rodM),
    liftKpa: (readState(state, STATE.liftPa) - flows.ambientPa) / 1000,
    exhaustAbsKpa: flows.turbine.inletPa / 1000,
    airKgPerS: flows.breath.airKgPerS,
    gear: does.gear,
    fuelRatio: inputs.fuelRatio,
    phase: does.phase,
  });
}

/** Keeps rod, speed and slip inside what the mechanics allow; the equations stop them there too. */
function keepWithinStops(run: Run): void {
  const { state } = run;
  state[STATE.rodM] = Math.min(run.inputs.car.gate.strokeM, Math.max(0, readState(state, STATE.rodM)));
  state[STATE.speedMps] = Math.max(0, readState(state, STATE.speedMps));
  state[STATE.slipRatio] = Math.max(0, readState(state, STATE.slipRatio));
}

/** Steps of equal length from now to `endS`, none longer than the wanted step. */
function advanceTo(run: Run, endS: number): void {
  const startS = run.timeS;
  const count = Math.ceil((endS - startS) / run.conditions.stepS - 1e-9);
  if (count <= 0) return;
  const stepS = (endS - startS) / count;
  for (let i = 0; i < count; i++) {
    run.timeS = startS + i * stepS;
    observe(run, stepS);
    run.step(run.timeS, stepS, run.state);
    keepWithinStops(run);
  }
  run.timeS = endS;
}

function setFaults(run: Run): void {
  const { car, damage } = applyFaults(run.car, legNow(run)?.faults ?? [], run.timeS);
  run.inputs.car = car;
  run.inputs.damage = damage;
  setValve(run, run.inputs.isValveOpen);
}

function setValve(run: Run, isOpen: boolean): void {
  run.inputs.isValveOpen = isOpen;
  run.inputs.ways = lineWays(run.inputs.car.solenoid, isOpen, run.inputs.damage);
}

function edgesNow(run: Run, solenoid: Solenoid, startS: number): readonly ValveEdge[] {
  const { conditions, inputs } = run;
  const heatedK = readState(run.state, STATE.coolerK) - 273.15 - conditions.ambient.temperatureC;
  const timing = valveTiming(inputs.car.solenoid, { supplyV: conditions.supplyV, heatedK });
  return solenoid.edgesOf(startS, inputs.damage.isSolenoidDead ? 0 : run.dutyPct, timing);
}

function startRun(car: PhysicalCar, legs: readonly DriveLeg[], conditions: DriveConditions): Run {
  const faulty = applyFaults(car, [], 0);
  const inputs: CarInputs = {
    ...faulty,
    ambient: conditions.ambient,
    gradientPct: 0,
    throttleRatio: 0.1,
    throttleRatioPerS: 0,
    sinceS: 0,
    isValveOpen: false,
    ways: lineWays(faulty.car.solenoid, false, faulty.damage),
    fuelRatio: 1,
    brakeMps2: 0,
    wantedRatio: overallRatio(car.vehicle, conditions.startGear),
    isClutchClosed: true,
  };
  const phases = legs.flatMap((leg) => leg.phases);
  return {
    car,
    conditions,
    inputs,
    state: startState(car, conditions),
    step: rungeKutta4(STATE_SIZE, equationsOfMotion(inputs)),
    driver: followPhases(phases, car.vehicle),
    legs,
    controls: legs.map((leg) => controlBoost(leg.settings)),
    legOfPhase: legs.flatMap((leg, index) => leg.phases.map(() => index)),
    recorder: recordTrace(),
    timeS: 0,
    dutyPct: 0,
    gear: conditions.startGear,
    phase: 0,
    isCut: false,
  };
}

/**
 * Drives a car through its legs, integrated in time by classical Runge-Kutta.
 *
 * Every opening and closing of the solenoid's valve is a boundary of a step, so that no step spans a jump of the
 * right-hand side; between two boundaries the steps are equal and at most `stepS` long. The controller sets its
 * duty once for each solenoid period.
 *
 * @param car the sound car
 * @param legs what is driven, under which settings
 * @param conditions air, heat, faults, start and step
 * @returns the noise-free trace, one row for each step; O(duration / stepS)
 */
export function simulateDrive(
  car: PhysicalCar,
  legs: readonly DriveLeg[],
  conditions: DriveConditions,
): Trace {
  const run = startRun(car, legs, conditions);
  const phaseCount = run.legOfPhase.length;
  const periodS = 1 / car.solenoid.frequencyHz;
  const solenoid = pulseSolenoid(periodS);
  let startS = -conditions.solenoidPhaseRatio * periodS;
  while (run.phase < phaseCount && run.timeS < LONGEST_DRIVE_S) {
    setFaults(run);
    const { manifoldPa } = carFlows(run.state, run.inputs, run.timeS).breath;
    const control = run.controls[run.legOfPhase[run.phase] ?? 0];
    run.dutyPct = control?.(manifoldPa / 1000 - conditions.ambient.pressureAbsKpa, periodS) ?? 0;
    for (const edge of edgesNow(run, solenoid, startS)) {
      advanceTo(run, Math.max(run.timeS, edge.timeS));
      setValve(run, edge.isOpen);
    }
    startS += periodS;
    advanceTo(run, startS);
  }
  observe(run, conditions.stepS);
  return run.recorder.finish();
}

import { describe, expect, it } from 'vitest';
import { NO_DAMAGE } from '../faults/damage.js';
import { seededRandom } from '../random/index.js';
import { lineWays } from './actuator-lines.js';
import { carFlows, type CarFlows } from './car-flows.js';
import type { CarInputs } from './car-inputs.js';
import { readState, STATE, STATE_SIZE } from './car-state.js';
import { drawCar } from './draw-car.js';
import { driveForceN, equationsOfMotion } from './equations-of-motion.js';
import { AIR_CP, AIR_CV, AIR_R } from './gas.js';
import { rungeKutta4 } from './integrate-rk4.js';
import { massFactor, overallRatio, roadLoadN } from './vehicle.js';

const STEP_S = 0.001;
const SECONDS = 2.5;

/** Runs a car at full load with the valve shut and adds up what flows (trapezoids) beside what the state holds. */
function balance(seed: number) {
  const car = drawCar(seededRandom(seed));
  const wantedRatio = overallRatio(car.vehicle, 3);
  const inputs: CarInputs = {
    car,
    damage: { ...NO_DAMAGE, leakM2: 2e-5 },
    ambient: { pressureAbsKpa: 100, temperatureC: 20 },
    gradientPct: 1,
    throttleRatio: 1,
    throttleRatioPerS: 0,
    sinceS: 0,
    isValveOpen: false,
    ways: lineWays(car.solenoid, false, NO_DAMAGE),
    fuelRatio: 1,
    brakeMps2: 0,
    wantedRatio,
    isClutchClosed: true,
  };
  const state = new Float64Array(STATE_SIZE);
  const chargeKg = (1e5 * car.charge.volumeM3) / (AIR_R * 300);
  state.set([chargeKg, chargeKg * AIR_CV * 300, 6000, 0, 1e5, 1e5, 295, 18, wantedRatio, 0]);
  const step = rungeKutta4(STATE_SIZE, equationsOfMotion(inputs));
  const rates = (flows: CarFlows): number[] => {
    const out = flows.breath.airKgPerS + flows.leakKgPerS + flows.recirculatedKgPerS;
    const blown = flows.compressor.flowKgPerS;
    const shaft = readState(state, STATE.shaftRadPerS);
    const speed = readState(state, STATE.speedMps);
    const bearing = car.shaft.frictionNmS * shaft * shaft;
    return [
      blown + flows.throughKgPerS - out,
      AIR_CP *
        (blown * flows.compressor.outletK + flows.throughKgPerS * flows.ambientK - out * flows.chargeK) -
        flows.coolerW,
      flows.turbine.powerW - flows.compressor.powerW - bearing,
      speed * (driveForceN(state, inputs, flows) - roadLoadN(car.vehicle, speed, 1)),
    ];
  };
  const held = (): number[] => [
    readState(state, STATE.chargeKg),
    readState(state, STATE.chargeJ),
    0.5 * car.shaft.inertiaKgM2 * readState(state, STATE.shaftRadPerS) ** 2,
    0.5 * car.vehicle.massKg * massFactor(wantedRatio) * readState(state, STATE.speedMps) ** 2,
  ];
  const start = held();
  const flowed = [0, 0, 0, 0];
  let before = rates(carFlows(state, inputs, 0));
  for (let i = 0; i * STEP_S < SECONDS; i++) {
    step(i * STEP_S, STEP_S, state);
    const now = rates(carFlows(state, inputs, (i + 1) * STEP_S));
    now.forEach((rate, which) => {
      flowed[which] = (flowed[which] ?? 0) + ((rate + (before[which] ?? 0)) / 2) * STEP_S;
    });
    before = now;
  }
  return { gained: held().map((value, which) => value - (start[which] ?? 0)), flowed };
}

describe('a car at full load', () => {
  it.each([1, 2, 3, 9])('keeps its books of air, heat, shaft and road (car %d)', (seed) => {
    const { gained, flowed } = balance(seed);
    ['charge mass', 'charge energy', 'shaft energy', 'kinetic energy'].forEach((name, which) => {
      expect(Math.abs((flowed[which] ?? 0) / (gained[which] ?? 0) - 1), name).toBeLessThan(0.002);
    });
  });
});

import { describe, expect, it } from 'vitest';
import { seededRandom } from '../random/index.js';
import { lineWays } from './actuator-lines.js';
import { NO_DAMAGE } from '../faults/damage.js';
import type { CarInputs } from './car-inputs.js';
import { STATE, STATE_SIZE } from './car-state.js';
import { drawCar } from './draw-car.js';
import { equationsOfMotion } from './equations-of-motion.js';
import { AIR_CV, AIR_R } from './gas.js';
import { rungeKutta4 } from './integrate-rk4.js';
import type { PhysicalCar, VehiclePart } from './physical-car.js';
import { massFactor, overallRatio, roadLoadN } from './vehicle.js';

const sound = drawCar(seededRandom(1));

function carWith(vehicle: Partial<VehiclePart>): PhysicalCar {
  return { ...sound, vehicle: { ...sound.vehicle, ...vehicle } };
}

/** The whole car out of gear at idle, rolling: seconds from one road speed down to another. */
function coastS(car: PhysicalCar, fromKmh: number, toKmh: number): number {
  const ambient = { pressureAbsKpa: 101.325, temperatureC: 20 };
  const inputs: CarInputs = {
    car,
    damage: NO_DAMAGE,
    ambient,
    gradientPct: 0,
    throttleRatio: 0,
    throttleRatioPerS: 0,
    sinceS: 0,
    isValveOpen: false,
    ways: lineWays(car.solenoid, false, NO_DAMAGE),
    fuelRatio: 1,
    brakeMps2: 0,
    wantedRatio: 0,
    isClutchClosed: false,
  };
  const state = new Float64Array(STATE_SIZE);
  const chargeKg = (101_325 * car.charge.volumeM3) / (AIR_R * 293.15);
  state[STATE.chargeKg] = chargeKg;
  state[STATE.chargeJ] = chargeKg * AIR_CV * 293.15;
  state[STATE.shaftRadPerS] = 1000;
  state[STATE.liftPa] = 101_325;
  state[STATE.shutPa] = 101_325;
  state[STATE.coolerK] = 293.15;
  state[STATE.speedMps] = fromKmh / 3.6;
  const step = rungeKutta4(STATE_SIZE, equationsOfMotion(inputs));
  const stepS = 0.005;
  for (let i = 0; i < 20_000; i++) {
    const before = state[STATE.speedMps] ?? 0;
    step(i * stepS, stepS, state);
    const now = state[STATE.speedMps] ?? 0;
    if (now <= toKmh / 3.6) return (i + (before - toKmh / 3.6) / (before - now)) * stepS;
  }
  return Infinity;
}

describe('the car out of gear', () => {
  // 40 CFR 86.529-98, figure F98-9: coast-down from 70 to 60 km/h under F = A + C V^2, V in km/h.
  it.each([
    { massKg: 100, a: 0, c: 0.0224, seconds: 2.95 },
    { massKg: 150, a: 4.32, c: 0.0238, seconds: 3.99 },
    { massKg: 200, a: 8.69, c: 0.0252, seconds: 4.85 },
    { massKg: 250, a: 13.06, c: 0.0266, seconds: 5.57 },
    { massKg: 300, a: 17.43, c: 0.0279, seconds: 6.18 },
    { massKg: 340, a: 20.92, c: 0.029, seconds: 6.6 },
  ])('coasts from 70 to 60 km/h in the official $seconds s at $massKg kg', ({ massKg, a, c, seconds }) => {
    const car = carWith({ massKg, roadLoadN: a, roadLoadNPerMps: 0, roadLoadNPerMps2: c * 3.6 * 3.6 });
    expect(Math.abs(coastS(car, 70, 60) - seconds)).toBeLessThan(0.02);
  });

  it('follows the closed form m / sqrt(f0 f2) [atan] over a long coast', () => {
    const car = carWith({ massKg: 1500, roadLoadN: 191.23, roadLoadNPerMps: 0, roadLoadNPerMps2: 0.404 });
    const root = Math.sqrt(0.404 / 191.23);
    const expected =
      (1500 / Math.sqrt(191.23 * 0.404)) * (Math.atan((100 / 3.6) * root) - Math.atan((50 / 3.6) * root));
    expect(coastS(car, 100, 50) / expected).toBeCloseTo(1, 5);
  });
});

describe('roadLoadN', () => {
  // m 1500 kg, Cd A 0.66 m2, air 1.225 kg/m3, rolling 0.013: recomputed independently.
  const { vehicle } = carWith({
    massKg: 1500,
    roadLoadN: 0.013 * 1500 * 9.80665,
    roadLoadNPerMps: 0,
    roadLoadNPerMps2: 0.5 * 1.225 * 0.66,
  });

  it.each([
    [0, 191.23],
    [10, 231.65],
    [20, 352.93],
    [40, 838.03],
  ])('at %d m/s is %d N', (speedMps, newtons) => {
    expect(Math.abs(roadLoadN(vehicle, speedMps, 0) - newtons)).toBeLessThan(0.006);
  });

  it('rises by 734.581 N on a 5 % grade, the sine form', () => {
    expect(roadLoadN(vehicle, 20, 5) - roadLoadN(vehicle, 20, 0)).toBeCloseTo(734.581, 2);
  });
});

describe('massFactor', () => {
  it('is 1.08, 1.20 and 1.40 at overall ratios 4, 8 and 12, and 1 out of gear', () => {
    expect([4, 8, 12, 0].map(massFactor)).toEqual([1.08, 1.2, 1.4, 1]);
  });
});

describe('overallRatio', () => {
  it('is 0 out of gear and falls from gear to gear', () => {
    const ratios = [1, 2, 3, 4, 5, 6].map((gear) => overallRatio(sound.vehicle, gear));
    expect(overallRatio(sound.vehicle, 0)).toBe(0);
    expect([...ratios].sort((a, b) => b - a)).toEqual(ratios);
  });
});

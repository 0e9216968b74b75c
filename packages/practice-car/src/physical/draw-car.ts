import { drawBetween } from '../random/draw-between.js';
import { drawOne } from '../random/draw-one.js';
import type { Random } from '../random/seeded-random.js';
import { matchTurbo } from './match-turbo.js';
import type {
  ChargePart,
  EnginePart,
  GatePart,
  PhysicalCar,
  Plumbing,
  SolenoidPart,
  VehiclePart,
} from './physical-car.js';

/** Area of a round opening, from its diameter in millimetres and a discharge coefficient of 0.7. */
const jetM2 = (diameterMm: number): number => 0.7 * (Math.PI / 4) * (diameterMm / 1000) ** 2;

const PLUMBINGS: readonly Plumbing[] = ['bleed', 'interrupt', 'two-chamber'];

/** Petrol engines of 1.2 to 2.6 l; friction, efficiency and exhaust heat as handbooks give for full load. */
function drawEngine(random: Random): EnginePart {
  const revLimitRpm = 100 * Math.round(drawBetween(random, 61, 76));
  return {
    displacementM3: Math.round(drawBetween(random, 12, 26)) / 10_000,
    volumetricPeakRatio: drawBetween(random, 0.9, 1.04),
    volumetricPeakRpm: revLimitRpm * drawBetween(random, 0.55, 0.72),
    volumetricFallRatio: drawBetween(random, 0.2, 0.5),
    indicatedEfficiencyRatio: drawBetween(random, 0.31, 0.36),
    frictionMepPa: drawBetween(random, 120_000, 180_000),
    idleRpm: drawBetween(random, 750, 950),
    revLimitRpm,
    exhaustIdleK: drawBetween(random, 680, 780),
    exhaustFullK: drawBetween(random, 1150, 1280),
    throttleM2: 0.8 * (Math.PI / 4) * drawBetween(random, 0.058, 0.072) ** 2,
  };
}

/** Jets of 1 to 2.4 mm, valves that open wider or narrower than them, 12 to 35 Hz, dead times of a few milliseconds. */
function drawSolenoid(random: Random): SolenoidPart {
  const plumbing = drawOne(random, PLUMBINGS);
  const restrictorM2 = jetM2(drawBetween(random, 1.2, 2.4));
  const narrowest = plumbing === 'bleed' ? 0.9 : 0.6;
  return {
    plumbing,
    frequencyHz: Math.round(drawBetween(random, 12, 35)),
    openS: drawBetween(random, 0.002, 0.006),
    closeS: drawBetween(random, 0.0015, 0.004),
    restrictorM2,
    valveM2: restrictorM2 * drawBetween(random, narrowest, 3.5),
    lineM3: drawBetween(random, 35e-6, 80e-6),
    heatPerK: 0.0039,
  };
}

/** Springs that alone allow 35 to 100 kPa, diaphragms of 46 to 64 mm, 9 to 14 mm of stroke. */
function drawGate(random: Random, portM: number): GatePart {
  const diaphragmM2 = (Math.PI / 4) * drawBetween(random, 0.046, 0.064) ** 2;
  const strokeM = drawBetween(random, 0.009, 0.014);
  const preloadN = drawBetween(random, 35_000, 100_000) * diaphragmM2;
  const rateNPerM = (drawBetween(random, 25_000, 60_000) * diaphragmM2) / strokeM;
  return {
    portM,
    dischargeRatio: 0.75,
    leakM2: drawBetween(random, 1e-6, 8e-6),
    strokeM,
    leverRatio: drawBetween(random, 0.55, 0.8),
    diaphragmM2,
    preloadN,
    rateNPerM,
    dampingNSPerM: rateNPerM * drawBetween(random, 0.012, 0.03),
    frictionN: preloadN * drawBetween(random, 0.01, 0.04),
  };
}

function drawCharge(random: Random, designKgPerS: number): ChargePart {
  return {
    volumeM3: drawBetween(random, 0.006, 0.013),
    coolerEffectivenessRatio: drawBetween(random, 0.6, 0.8),
    coolerHeatJPerK: drawBetween(random, 3000, 8000),
    coolerStillWPerK: drawBetween(random, 15, 40),
    coolerMovingWPerKPerMps: drawBetween(random, 8, 16),
    coolerLossPaS2PerKg2: drawBetween(random, 2000, 7000) / designKgPerS ** 2,
    recirculationM2: drawBetween(random, 2e-4, 4e-4),
  };
}

function drawVehicle(random: Random): VehiclePart {
  const massKg = 10 * Math.round(drawBetween(random, 100, 155));
  const spread = drawBetween(random, 0.92, 1.08);
  return {
    massKg,
    roadLoadN: massKg * 9.80665 * drawBetween(random, 0.01, 0.014),
    roadLoadNPerMps: drawBetween(random, 0, 2),
    roadLoadNPerMps2: 0.6 * drawBetween(random, 0.58, 0.78),
    wheelRadiusM: drawBetween(random, 0.295, 0.33),
    finalDriveRatio: drawBetween(random, 3.9, 4.6),
    gearRatios: [3.5, 2.06, 1.39, 1.04, 0.83, 0.69].map((ratio) => Math.round(1000 * ratio * spread) / 1000),
    drivelineEfficiencyRatio: drawBetween(random, 0.88, 0.94),
    gripN: massKg * 9.80665 * drawBetween(random, 0.65, 0.85),
  };
}

/**
 * One car of the practice yard, drawn from the ranges of docs/practice-car.md.
 *
 * Engine, gate spring, solenoid and vehicle are drawn on their own; compressor and turbine are then matched to the
 * engine as a maker would, for a drawn design pressure ratio. Port, jets and spring are not matched to one another, so
 * that cars differ in kind: dead zones, knees, early saturation, and gates too small to hold boost down.
 *
 * @param random stream to draw from
 * @returns a car; the same stream gives the same car
 * @example drawCar(seededRandom(1)).solenoid.plumbing
 */
export function drawCar(random: Random): PhysicalCar {
  const engine = drawEngine(random);
  const turbo = matchTurbo(engine, random);
  const gate = drawGate(random, turbo.portM);
  const solenoid = drawSolenoid(random);
  const litres = (engine.displacementM3 * 1000).toFixed(1);
  return {
    description: `${litres} l, ${solenoid.plumbing} plumbing, spring ${Math.round(gate.preloadN / gate.diaphragmM2 / 1000)} kPa`,
    engine,
    compressor: turbo.compressor,
    turbine: turbo.turbine,
    shaft: turbo.shaft,
    gate,
    solenoid,
    charge: drawCharge(random, turbo.designKgPerS),
    vehicle: drawVehicle(random),
  };
}

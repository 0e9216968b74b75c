import { describe, expect, it } from 'vitest';
import { seededRandom } from '../random/index.js';
import { drawCar } from './draw-car.js';
import { gateForceN, gateSpeedMps } from './gate-motion.js';

// Quasi-static balance at the crack point: a 50 mm diaphragm set for 70 kPa has 137.445 N of preload; 50 kPa across a
// 25 mm valve adds 24.54 N and lowers the crack pressure to 57.5 kPa (recomputed from the areas).
const gate = {
  ...drawCar(seededRandom(1)).gate,
  diaphragmM2: 1.963495e-3,
  preloadN: 137.445,
  portM: 0.025,
  leverRatio: 1,
  rateNPerM: 8000,
  frictionN: 3,
};
const none = { liftPa: 0, shutPa: 0, flapPa: 0 };

describe('gateForceN', () => {
  it('is balanced at 70 kPa without exhaust pressure', () => {
    expect(Math.abs(gateForceN(gate, { ...none, liftPa: 70_000 }, 0))).toBeLessThan(0.001);
  });

  it('is balanced at 57.5 kPa with 50 kPa of exhaust pressure on the valve', () => {
    expect(Math.abs(gateForceN(gate, { ...none, liftPa: 57_500, flapPa: 50_000 }, 0))).toBeLessThan(0.02);
    expect(gateForceN(gate, { ...none, flapPa: 50_000 }, 0) - gateForceN(gate, none, 0)).toBeCloseTo(
      24.5437,
      3,
    );
  });

  it('falls with stroke by the spring rate and with pressure on the far side by the diaphragm', () => {
    const open = { ...none, liftPa: 90_000 };
    expect(gateForceN(gate, open, 0.005) - gateForceN(gate, open, 0)).toBeCloseTo(-40, 6);
    expect(gateForceN(gate, { ...open, shutPa: 90_000 }, 0)).toBeCloseTo(-137.445, 6);
  });
});

describe('gateSpeedMps', () => {
  it('stands still inside dry friction and moves with what is left over it', () => {
    expect(gateSpeedMps(gate, 2.9, 0.003)).toBe(0);
    expect(gateSpeedMps(gate, -2.9, 0.003)).toBe(0);
    expect(gateSpeedMps(gate, 13, 0.003)).toBeCloseTo(10 / gate.dampingNSPerM, 9);
    expect(gateSpeedMps(gate, -13, 0.003)).toBeCloseTo(-10 / gate.dampingNSPerM, 9);
  });

  it('stops at both ends of its stroke', () => {
    expect(gateSpeedMps(gate, -50, 0)).toBe(0);
    expect(gateSpeedMps(gate, 50, gate.strokeM)).toBe(0);
  });
});

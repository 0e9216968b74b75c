import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { seededRandom } from '../random/index.js';
import { drawCar } from './draw-car.js';
import { pulseSolenoid, valveTiming } from './solenoid-edges.js';

/** Share of time the valve is open at a steady duty, over ten periods after five to settle. */
function openShare(dutyPct: number, timing: { openS: number; closeS: number }, periodS = 0.05): number {
  const solenoid = pulseSolenoid(periodS);
  let isOpen = false;
  let sinceS = 0;
  let openS = 0;
  const pass = (toS: number): void => {
    if (isOpen) openS += Math.max(0, toS - Math.max(sinceS, 5 * periodS));
    sinceS = toS;
  };
  for (let period = 0; period < 15; period++) {
    for (const edge of solenoid.edgesOf(period * periodS, dutyPct, timing)) {
      pass(edge.timeS);
      isOpen = edge.isOpen;
    }
    pass((period + 1) * periodS);
  }
  return openS / (10 * periodS);
}

describe('pulseSolenoid', () => {
  it('is open for exactly the duty when the valve has no dead time to speak of', () => {
    for (const duty of [0, 10, 37, 50, 99, 100])
      expect(openShare(duty, { openS: 1e-9, closeS: 1e-9 })).toBeCloseTo(duty / 100, 6);
  });

  it('never opens for pulses shorter than its opening time and never shuts for pauses shorter than its closing time', () => {
    const timing = { openS: 0.005, closeS: 0.003 };
    expect(openShare(9.9, timing)).toBe(0);
    expect(openShare(10.1, timing)).toBeGreaterThan(0);
    expect(openShare(94.1, timing)).toBe(1);
    expect(openShare(93.9, timing)).toBeLessThan(1);
  });

  it('shifts the open share by the dead times in the middle of its range', () => {
    expect(openShare(50, { openS: 0.005, closeS: 0.003 })).toBeCloseTo((0.025 - 0.005 + 0.003) / 0.05, 2);
  });

  it('opens for no less time and without a jump when the duty rises', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 99.5, noNaN: true }),
        fc.double({ min: 0.001, max: 0.008, noNaN: true }),
        fc.double({ min: 0.001, max: 0.006, noNaN: true }),
        (duty, openS, closeS) => {
          const more = openShare(duty + 0.5, { openS, closeS }) - openShare(duty, { openS, closeS });
          expect(more).toBeGreaterThan(-1e-9);
          expect(more).toBeLessThan(0.06);
        },
      ),
      { seed: 11, numRuns: 150 },
    );
  });

  it('stays open across periods at full duty and shuts once when the duty drops to nothing', () => {
    const solenoid = pulseSolenoid(0.04);
    const timing = { openS: 0.004, closeS: 0.002 };
    expect(solenoid.edgesOf(0, 100, timing)).toEqual([{ timeS: 0.004, isOpen: true }]);
    expect(solenoid.edgesOf(0.04, 100, timing)).toEqual([]);
    expect(solenoid.edgesOf(0.08, 0, timing)).toEqual([{ timeS: 0.082, isOpen: false }]);
  });
});

describe('valveTiming', () => {
  const { solenoid } = drawCar(seededRandom(3));

  it('lengthens the opening time when the coil is hot or the supply weak', () => {
    const rated = valveTiming(solenoid, { supplyV: 13.8, heatedK: 0 }).openS;
    expect(rated).toBeCloseTo(solenoid.openS, 12);
    expect(valveTiming(solenoid, { supplyV: 13.8, heatedK: 60 }).openS / rated).toBeCloseTo(1.234, 6);
    expect(valveTiming(solenoid, { supplyV: 11.5, heatedK: 0 }).openS / rated).toBeCloseTo(1.2, 6);
  });
});

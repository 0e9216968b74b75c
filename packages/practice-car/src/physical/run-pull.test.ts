import { NotFiniteError, OutOfRangeError } from '@pullbook/tuning-math';
import { describe, expect, it } from 'vitest';
import { faultOf } from '../faults/index.js';
import { seededRandom } from '../random/index.js';
import { drawCar } from './draw-car.js';
import { quickPeak } from './quick-peak.js';
import { runPull } from './run-pull.js';
import { tuneOracle } from './tune-oracle.js';
import { varyPull } from './vary-pull.js';

const SHORT = { endRpm: 4200 } as const;
const carOf = (seed: number) => drawCar(seededRandom(seed));

describe('drawCar', () => {
  it('gives the same car for the same seed, another for the next, and every plumbing in time', () => {
    expect(carOf(12)).toEqual(carOf(12));
    expect(carOf(12)).not.toEqual(carOf(13));
    const kinds = Array.from({ length: 30 }, (_, seed) => carOf(seed).solenoid.plumbing);
    expect(new Set(kinds)).toEqual(new Set(['bleed', 'interrupt', 'two-chamber']));
  });

  it('draws only finite, positive figures', () => {
    const numbers = (value: unknown): number[] =>
      typeof value === 'number'
        ? [value]
        : typeof value === 'object'
          ? Object.values(value ?? {}).flatMap(numbers)
          : [];
    for (let seed = 0; seed < 300; seed++)
      for (const figure of numbers(carOf(seed))) expect(Number.isFinite(figure) && figure >= 0).toBe(true);
  });
});

describe('runPull', () => {
  it('repeats bit for bit', () => {
    const first = runPull(carOf(3), { dutyPct: 33, ...SHORT });
    const second = runPull(carOf(3), { dutyPct: 33, ...SHORT });
    expect(second.trace.boostKpa).toEqual(first.trace.boostKpa);
    expect({ ...second, trace: null }).toEqual({ ...first, trace: null });
  });

  it('has converged: peak and settled boost change by less than 0.15 % and rise time by 10 ms at a quarter of the step', () => {
    for (const seed of [1, 2, 8, 12]) {
      const usual = runPull(carOf(seed), { dutyPct: 40, ...SHORT });
      const fine = runPull(carOf(seed), { dutyPct: 40, ...SHORT, stepS: 0.001 });
      expect(Math.abs(usual.peakKpa / fine.peakKpa - 1)).toBeLessThan(0.0015);
      expect(Math.abs(usual.settledKpa / fine.settledKpa - 1)).toBeLessThan(0.0015);
      expect(Math.abs((usual.riseTimeS ?? 0) - (fine.riseTimeS ?? 9))).toBeLessThan(0.01);
    }
  });

  it('makes no less boost with more duty, within 0.1 %', () => {
    for (const seed of [2, 5, 7]) {
      let most = 0;
      for (let dutyPct = 0; dutyPct <= 100; dutyPct += 12.5) {
        const { peakKpa } = runPull(carOf(seed), { dutyPct, endRpm: 5000 });
        expect(peakKpa).toBeGreaterThan(most * 0.999);
        most = Math.max(most, peakKpa);
      }
    }
  });

  it('differs in kind from car to car: dead zones, steep rises, saturation, floors far above the spring', () => {
    const peaks = (seed: number, duties: number[]) =>
      duties.map((dutyPct) => runPull(carOf(seed), { dutyPct }).peakKpa);
    const [dead0 = 0, dead20 = 0, dead60 = 0] = peaks(7, [0, 20, 60]);
    expect(dead20 / dead0).toBeLessThan(1.01);
    expect(dead60 / dead0).toBeGreaterThan(1.5);
    const [sat10 = 0, sat70 = 0, sat100 = 0] = peaks(10, [10, 70, 100]);
    expect(sat100 / sat70).toBeLessThan(1.02);
    expect(sat70 / sat10).toBeLessThan(1.02);
    const floor = carOf(10);
    expect(sat10 * 1000).toBeGreaterThan((2 * floor.gate.preloadN) / floor.gate.diaphragmM2);
  });

  it('peaks at the spring or below with the solenoid idle: exhaust on the flap lowers the crack pressure', () => {
    // Held to cars whose gate is wide enough not to creep.
    for (const seed of [1, 5, 6, 8]) {
      const car = carOf(seed);
      const { settledKpa } = runPull(car, { dutyPct: 0 });
      expect(settledKpa * 1000).toBeLessThan((1.05 * car.gate.preloadN) / car.gate.diaphragmM2);
    }
  });

  it('comes on sooner and overshoots more with more gate hold', () => {
    const at = (gateHoldPct: number) =>
      runPull(carOf(2), { dutyPct: 60, gateHoldPct, targetKpa: 75, ...SHORT });
    const [none, half, most] = [at(0), at(50), at(95)];
    expect(half.riseTimeS ?? 9).toBeLessThan((none.riseTimeS ?? 0) * 0.9);
    expect(most.peakKpa).toBeGreaterThan(none.peakKpa * 1.05);
    expect(most.onsetRpm ?? 9e9).toBeLessThanOrEqual(none.onsetRpm ?? 9e9);
  });

  it('brings settled boost to the target in closed loop', () => {
    const loose = runPull(carOf(1), { dutyPct: 30, targetKpa: 120 });
    const corrected = runPull(carOf(1), { dutyPct: 30, targetKpa: 120, correctionStrength: 3 });
    expect(Math.abs(corrected.finalKpa - 120)).toBeLessThan(2);
    expect(Math.abs(loose.finalKpa - 120)).toBeGreaterThan(10);
  });

  it('lasts longer in a longer gear and uphill, and peaks lower in thin air or hot', () => {
    const car = carOf(8);
    const third = runPull(car, { dutyPct: 40 });
    const time = (options: object) => {
      const pull = runPull(car, { dutyPct: 40, ...options });
      return pull.endS - pull.startS;
    };
    expect(time({ gear: 4 })).toBeGreaterThan(third.endS - third.startS);
    expect(time({ gradientPct: 6 })).toBeGreaterThan(third.endS - third.startS);
    const thin = { ambient: { pressureAbsKpa: 84, temperatureC: 20 } };
    const hot = { ambient: { pressureAbsKpa: 101.325, temperatureC: 40 }, heatSoakC: 30 };
    expect(runPull(car, { dutyPct: 40, ...thin }).peakKpa).toBeLessThan(third.peakKpa);
    expect(runPull(car, { dutyPct: 40, ...hot }).peakKpa).toBeLessThan(third.peakKpa);
  });

  it('cuts the fuel at the over-boost cut and ends the pull there', () => {
    const cut = runPull(carOf(8), { dutyPct: 40, overBoostCutKpa: 90 });
    expect(cut.wasFuelCut).toBe(true);
    expect(cut.peakKpa).toBeLessThan(93);
    expect(cut.endS).toBeLessThan(runPull(carOf(8), { dutyPct: 40 }).endS);
  });

  it('soars from the moment at which a hose comes off, and not before', () => {
    const car = carOf(1);
    const sound = runPull(car, { dutyPct: 20 });
    const fromS = sound.settledFromS + 1;
    const broken = runPull(car, { dutyPct: 20, faults: [faultOf('actuator-line-off', 1, fromS)] });
    const until = sound.trace.timeS.findIndex((timeS) => timeS > fromS - 0.1);
    expect(broken.trace.boostKpa.slice(0, until)).toEqual(sound.trace.boostKpa.slice(0, until));
    expect(broken.peakKpa).toBeGreaterThan(1.3 * sound.peakKpa);
    expect(broken.peakTimeS).toBeGreaterThan(fromS);
  });

  it('refuses options that no pull of the car can have, naming them', () => {
    const car = carOf(1);
    expect(() => runPull(car, { dutyPct: 101 })).toThrow(OutOfRangeError);
    expect(() => runPull(car, { dutyPct: Number.NaN })).toThrow(NotFiniteError);
    expect(() => runPull(car, { dutyPct: 20, gear: 9 })).toThrow('gear');
    expect(() => runPull(car, { dutyPct: 20, startRpm: 3000, endRpm: 2900 })).toThrow('endRpm');
    expect(() => runPull(car, { dutyPct: 20, faults: [faultOf('leak', 2)] })).toThrow('leak');
  });
});

describe('tuneOracle', () => {
  it('finds a duty whose peak is the target within 0.2 %', () => {
    const answer = tuneOracle(carOf(8), 120, SHORT);
    expect(answer.converged && answer.isReachable).toBe(true);
    expect(
      Math.abs(runPull(carOf(8), { targetKpa: 120, ...SHORT, dutyPct: answer.dutyPct }).peakKpa - 120),
    ).toBeLessThan(0.24);
  });

  it('says so when the target lies under the floor or over the power of the car', () => {
    const low = tuneOracle(carOf(8), 20, SHORT);
    expect(low).toMatchObject({ isReachable: false, dutyPct: 0 });
    const high = tuneOracle(carOf(8), 490, SHORT);
    expect(high).toMatchObject({ isReachable: false, dutyPct: 100 });
    expect(() => tuneOracle(carOf(8), 0)).toThrow(OutOfRangeError);
  });
});

describe('quickPeak', () => {
  it('scatters about the truth by between 0.2 % and 2.5 %, and repeats for one seed', () => {
    const car = carOf(6);
    const read = (seed: number) => {
      const random = seededRandom(seed);
      return Array.from(
        { length: 10 },
        () => quickPeak(car, { dutyPct: 40, ...SHORT }, random).recordedPeakKpa,
      );
    };
    const peaks = read(5);
    const mean = peaks.reduce((sum, peak) => sum + peak, 0) / peaks.length;
    const deviation = Math.sqrt(
      peaks.reduce((sum, peak) => sum + (peak - mean) ** 2, 0) / (peaks.length - 1),
    );
    expect(deviation / mean).toBeGreaterThan(0.002);
    expect(deviation / mean).toBeLessThan(0.025);
    expect(Math.abs(mean / runPull(car, { dutyPct: 40, ...SHORT }).peakKpa - 1)).toBeLessThan(0.02);
    expect(read(5)).toEqual(peaks);
  });
});

describe('varyPull', () => {
  it('leaves what was set in the controller alone', () => {
    const varied = varyPull({ dutyPct: 31, gateHoldPct: 60, targetKpa: 140 }, seededRandom(1));
    expect(varied).toMatchObject({ dutyPct: 31, gateHoldPct: 60, targetKpa: 140 });
    expect(varied.startRpm).not.toBe(2200);
  });
});

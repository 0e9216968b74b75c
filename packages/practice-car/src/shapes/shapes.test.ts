import { describe, expect, it } from 'vitest';
import {
  DEVELOPMENT_SHAPES,
  drawShapeCar,
  driveShapeCar,
  JUDGEMENT_SHAPES,
  SEEN_SHAPES,
  USUAL_CONDITIONS,
  type CatalogueEntry,
  type ShapeCar,
} from './index.js';

const SEEDS = Array.from({ length: 25 }, (_, index) => 40 + 7 * index);
const DUTIES = Array.from({ length: 201 }, (_, step) => step / 2);

const drawAll = (entry: CatalogueEntry): ShapeCar[] => SEEDS.map((seed) => drawShapeCar({ ...entry, seed }));

const every: readonly (readonly [string, CatalogueEntry])[] = [
  ...DEVELOPMENT_SHAPES.map((entry) => [`development: ${entry.shape.name}`, entry] as const),
  ...JUDGEMENT_SHAPES.map((entry) => [`judgement: ${entry.shape.name}`, entry] as const),
];

describe.each(every)('%s', (_, entry) => {
  const cars = drawAll(entry);

  it('never falls as duty rises, and starts at the base boost or at a floor above it', () => {
    for (const { truth, baseKpa } of cars) {
      const means = DUTIES.map(truth.meanKpa);
      means.forEach((mean, index) => {
        expect(Number.isFinite(mean)).toBe(true);
        expect(mean).toBeGreaterThanOrEqual((means[index - 1] ?? 0) - 1e-9);
      });
      // A measured base is within four times its error of 3 %; a floor may lie above it, never below.
      if (baseKpa !== null) expect(means[0]).toBeGreaterThan(0.88 * baseKpa);
      expect(means[0]).toBeGreaterThanOrEqual(34.9);
    }
  });

  it('has a target, tolerance, ceiling and scatter inside the announced ranges', () => {
    for (const { goal, truth, controller } of cars) {
      expect(goal.toleranceKpa / goal.targetKpa).toBeGreaterThanOrEqual(0.02);
      expect(goal.toleranceKpa / goal.targetKpa).toBeLessThanOrEqual(0.03);
      expect(goal.ceilingKpa / goal.targetKpa).toBeGreaterThanOrEqual(1.06);
      expect(goal.ceilingKpa / goal.targetKpa).toBeLessThanOrEqual(1.12);
      expect(truth.scatterRatio).toBeGreaterThanOrEqual(0.005);
      expect(truth.scatterRatio).toBeLessThanOrEqual(0.025);
      expect(Math.abs(truth.soakShiftRatio)).toBeLessThanOrEqual(0.03);
      expect(truth.falsePullShare).toBeLessThanOrEqual(0.04);
      expect(controller.dutyMin).toBeLessThan(controller.dutyMax);
    }
  });

  it('has a setting that makes the target, unless it is of a kind that has none', () => {
    for (const { goal, truth, controller } of cars) {
      const { dutyMin, dutyMax, dutyStep } = controller;
      const settings = Math.floor((dutyMax - dutyMin) / dutyStep);
      const misses = Array.from({ length: settings + 1 }, (_, step) =>
        Math.abs(truth.meanKpa(dutyMin + step * dutyStep) - goal.targetKpa),
      );
      const isMade = Math.min(...misses) <= goal.toleranceKpa;
      expect(isMade).toBe(entry.shape.kind !== 'out-of-reach' && entry.shape.kind !== 'floor-over-target');
    }
  });

  it('is the same car, with the same pulls, for the same seed, and another for the next', () => {
    const take = (seed: number): unknown => {
      const car = drawShapeCar({ ...entry, seed });
      const drive = driveShapeCar(car);
      const duties = [car.controller.dutyMin, 30, 45, 45, 60];
      return [car.goal, car.controller, car.baseKpa, duties.map((duty) => drive.pull(duty))];
    };
    expect(take(3)).toEqual(take(3));
    expect(take(3)).not.toEqual(take(4));
  });

  it('shows a fault only where its kind has one, and then to the right side', () => {
    const isSoaring = entry.shape.kind === 'soaring-fault';
    const isFalling = entry.shape.kind === 'falling-fault';
    for (const { truth, goal, controller } of cars) {
      expect(truth.fault !== null).toBe(isSoaring || isFalling);
      if (!truth.fault) continue;
      expect(truth.fault.fromPull).toBeGreaterThanOrEqual(1);
      for (const duty of [controller.dutyMin, 30, 60, controller.dutyMax]) {
        const healthyKpa = truth.meanKpa(duty);
        const faultyKpa = truth.fault.meanKpa(healthyKpa);
        if (isSoaring) expect(faultyKpa).toBeGreaterThan(Math.max(1.1 * goal.ceilingKpa, healthyKpa - 1e-9));
        if (isFalling) expect(faultyKpa).toBeLessThanOrEqual(healthyKpa + 1e-9);
      }
      if (isFalling) expect(truth.fault.meanKpa(goal.targetKpa)).toBeLessThan(0.97 * goal.targetKpa);
    }
  });
});

describe('the catalogues', () => {
  it('share no shape but the two kinds that no duty suits, and name each shape once', () => {
    const names = (catalogue: readonly CatalogueEntry[]): string[] =>
      catalogue.map(({ shape }) => shape.name);
    const developed = names(DEVELOPMENT_SHAPES);
    const judged = names(JUDGEMENT_SHAPES);
    expect(judged.filter((name) => developed.includes(name))).toEqual(['unreachable', 'floor over target']);
    expect(new Set(developed).size).toBe(developed.length);
    expect(new Set(judged).size).toBe(judged.length);
    expect(judged.length - 2).toBeGreaterThanOrEqual(9);
    const rises = new Set(DEVELOPMENT_SHAPES.flatMap((entry) => entry.rises));
    expect(JUDGEMENT_SHAPES.flatMap((entry) => entry.rises).some((rise) => rises.has(rise))).toBe(false);
    expect(SEEN_SHAPES.every(({ shape }) => developed.includes(shape.name))).toBe(true);
  });

  it('have shares that sum to 1', () => {
    for (const catalogue of [DEVELOPMENT_SHAPES, JUDGEMENT_SHAPES, SEEN_SHAPES])
      expect(catalogue.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(1, 12);
  });
});

describe('drawShapeCar', () => {
  it('rises over fewer points of duty with more steepness, and scatters more with more scatter', () => {
    for (const { shape, rises } of JUDGEMENT_SHAPES.filter((entry) => entry.shape.kind === 'healthy')) {
      const usual = drawShapeCar({ shape, rises, seed: 11 });
      const steepness = 2;
      const steep = drawShapeCar({ shape, rises, seed: 11, conditions: { ...USUAL_CONDITIONS, steepness } });
      expect(DUTIES.map(steep.truth.meanKpa)).not.toEqual(DUTIES.map(usual.truth.meanKpa));
      const noisy = drawShapeCar({ shape, rises, seed: 11, conditions: { ...USUAL_CONDITIONS, scatter: 2 } });
      expect(noisy.truth.scatterRatio).toBeCloseTo(2 * usual.truth.scatterRatio, 12);
    }
  });
});

import { describe, expect, test } from 'vitest';
import { NotFiniteError } from '../errors.js';
import { fitConditions, forecastGrid, forecastPeak, shiftByConditions, usualConditions } from './index.js';

const usual = { gear: 4, gradientPct: 0, intakeC: 20, barometerAbsKpa: 100, heatSoakC: 0 };
const nothing = { gear: null, gradientPct: null, intakeC: null, barometerAbsKpa: null, heatSoakC: null };
const pulls = [140, 141, 139, 140].map((peakKpa) => ({ peakKpa, conditions: usual }));

describe('usualConditions', () => {
  test('is the median of what is known and leaves out what is not', () => {
    const known = [8, 30, 12].map((intakeC) => ({ ...nothing, intakeC, gear: 3, heatSoakC: 5 }));
    expect(usualConditions([...known, nothing])).toEqual({ intakeC: 12 });
    expect(usualConditions([])).toEqual({});
  });
  test('refuses NaN', () => {
    expect(() => usualConditions([{ ...nothing, intakeC: NaN }])).toThrow(NotFiniteError);
  });
});

describe('shiftByConditions', () => {
  const model = fitConditions(pulls);
  const later = [
    { ...usual, intakeC: -4, barometerAbsKpa: 95 },
    { ...usual, intakeC: -6, barometerAbsKpa: 95 },
  ];
  test('adds up in quadrature what the changed conditions may do', () => {
    const { uncorrected, notWritten, possiblePct } = shiftByConditions(model, [usual], later);
    const sizes = model.effects.map(({ effectPct, uncertaintyPct }) => Math.hypot(effectPct, uncertaintyPct));
    expect(uncorrected.map(({ condition, change }) => [condition, change])).toEqual([
      ['intake', -25],
      ['barometer', -5],
    ]);
    expect(possiblePct).toBeCloseTo(Math.hypot(2.5 * (sizes[2] ?? NaN), 0.5 * (sizes[3] ?? NaN)), 12);
    // By hand from the priors alone: 2.5 steps of 1 % and half a step of 3 %.
    expect(possiblePct).toBeCloseTo(Math.hypot(2.5, 1.5), 1);
    expect(notWritten).toEqual([]);
  });
  test('names what one side does not know, and sees no change in the same weather', () => {
    const hidden = { ...usual, barometerAbsKpa: null };
    expect(shiftByConditions(model, [usual], [hidden])).toEqual({
      uncorrected: [],
      notWritten: ['barometer'],
      possiblePct: 0,
    });
    expect(shiftByConditions(model, [], [usual]).notWritten).toHaveLength(5);
  });
  test('leaves out an effect that is known, since it is corrected for', () => {
    const varied = [0, 10, 20, 30].flatMap((intakeC) =>
      [0.5, -0.5, 0.2].map((off) => ({
        peakKpa: 140 + off - 0.3 * intakeC,
        conditions: { ...usual, intakeC },
      })),
    );
    expect(shiftByConditions(fitConditions(varied), [usual], [{ ...usual, intakeC: 0 }]).uncorrected).toEqual(
      [],
    );
  });
  test('refuses NaN', () => {
    expect(() => shiftByConditions(model, [usual], [{ ...usual, intakeC: NaN }])).toThrow('later intakeC');
  });
});

describe('forecastGrid', () => {
  const model = fitConditions(pulls);
  test('has in each cell what forecastPeak says there', () => {
    const grid = forecastGrid(model, {
      rows: { field: 'intakeC', values: [0, 20] },
      columns: { field: 'gear', values: [3, 4, 5] },
      ceilingKpa: 150,
    });
    expect(grid.map((row) => row.length)).toEqual([3, 3]);
    expect(grid[0]?.[2]).toEqual(
      forecastPeak(model, { ...model.reference, intakeC: 0, gear: 5 }, { ceilingKpa: 150 }),
    );
    expect(grid[1]?.[1]?.unknown).toEqual([]);
    expect(grid[0]?.[0]?.unknown).toEqual(['gear', 'intake']);
  });
  test('refuses what forecastPeak refuses', () => {
    const axis = { field: 'intakeC', values: [NaN] } as const;
    const request = { rows: axis, columns: axis, ceilingKpa: 150 };
    expect(() => forecastGrid(model, request)).toThrow(NotFiniteError);
  });
});

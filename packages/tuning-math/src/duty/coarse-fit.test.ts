import { describe, expect, it } from 'vitest';
import { coarseLogFits } from './coarse-fit.js';
import { scalePulls } from './scaled-pulls.js';
import { tabulateCurves, TABLE_POINTS } from './tabulate-curves.js';

const goal = { targetKpa: 140, toleranceKpa: 3, ceilingKpa: 155 };
const BASE = 60;
/** Rises that reach the target at 60 % duty by ever steeper powers. */
const EXPONENTS = [0.6, 1, 1.5, 2, 3, 5];
const library = tabulateCurves(
  EXPONENTS.map((exponent) =>
    Float64Array.from({ length: TABLE_POINTS }, (_, duty) => (duty / 60) ** exponent),
  ),
);

function fitsOf(duties: readonly number[], exponent: number, givenUpBelow?: number): Float64Array {
  const peak = (duty: number): number => BASE + (goal.targetKpa - BASE) * (duty / 60) ** exponent;
  const pulls = duties.map((duty) => ({ duty, peakKpa: peak(duty) }));
  const { rows, logFits } = coarseLogFits(library, scalePulls(pulls, { goal, baseKpa: BASE }), {
    givenUpBelow,
  });
  const fits = new Float64Array(library.count).fill(-Infinity);
  rows.forEach((row, fit) => (fits[row] = logFits[fit] as number));
  return fits;
}

describe('coarseLogFits(library, pulls)', () => {
  it.each(EXPONENTS.map((exponent, row) => [exponent, row]))(
    'finds the curve of power %d',
    (exponent, row) => {
      const fits = fitsOf([15, 25, 35, 45, 55, 60, 60], exponent);
      expect(fits.indexOf(Math.max(...fits))).toBe(row);
    },
  );

  it('stays inside the range of numbers with as many pulls as a request may hold, all at one steep duty', () => {
    const fits = fitsOf(new Array<number>(200).fill(59), 5);
    expect(Number.isFinite(Math.max(...fits))).toBe(true);
    expect([...fits].some(Number.isNaN)).toBe(false);
  });

  it('gives up a curve only where it is hopeless beside the best', () => {
    const one = fitsOf([15, 35, 60], 2);
    expect([...one].every(Number.isFinite)).toBe(true);
    const many = fitsOf(
      Array.from({ length: 60 }, (_, index) => 5 + index),
      EXPONENTS[0] ?? NaN,
    );
    expect(many[0]).toBe(Math.max(...many));
    expect(many.at(-1)).toBe(-Infinity);
  });

  it('keeps every curve that fits worse than the best by no more than is asked, and leaves out others', () => {
    const duties = [15, 25, 35, 45, 55, 60];
    const all = fitsOf(duties, 2, Infinity);
    const best = Math.max(...all);
    const near = fitsOf(duties, 2, 12);
    const isNear = (fit: number): boolean => fit >= best - 12;
    expect([...near].filter(isNear)).toEqual([...all].filter(isNear));
    expect([...near].filter(Number.isFinite).length).toBeLessThan(all.length);
  });
});

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { spreadLabels } from './spread-labels.js';
import { textWidth } from './text-width.js';
import { tidyTicks } from './tidy-ticks.js';

describe('tidyTicks(span, mostTicks)', () => {
  it('finds round values and writes them with the decimals they need', () => {
    expect(tidyTicks({ low: 0, high: 1.7 }, 4).map((tick) => tick.text)).toEqual([
      '0.0',
      '0.5',
      '1.0',
      '1.5',
    ]);
    expect(tidyTicks({ low: 55, high: 152 }, 6).map((tick) => tick.text)).toEqual([
      '60',
      '80',
      '100',
      '120',
      '140',
    ]);
    expect(tidyTicks({ low: -12, high: 9 }, 5).map((tick) => tick.text)).toEqual(['−10', '−5', '0', '5']);
  });

  it('never gives more than asked, and only values inside', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -1e6, max: 1e6, noNaN: true }),
        fc.double({ min: 0.01, max: 1e6, noNaN: true }),
        fc.integer({ min: 1, max: 12 }),
        (low, extent, most) => {
          const ticks = tidyTicks({ low, high: low + extent }, most);
          expect(ticks.length).toBeLessThanOrEqual(most + 1);
          for (const { value } of ticks) {
            expect(value).toBeGreaterThanOrEqual(low - extent * 1e-9);
            expect(value).toBeLessThanOrEqual(low + extent * (1 + 1e-9));
          }
        },
      ),
      { seed: 20261125 },
    );
  });
});

describe('spreadLabels(labels, room)', () => {
  it('leaves labels alone that do not touch', () => {
    const labels = [
      { at: 20, extent: 20, weight: 1 },
      { at: 60, extent: 20, weight: 1 },
    ];
    expect(spreadLabels(labels, { start: 0, end: 100, gap: 4 })).toEqual([20, 60]);
  });

  it('moves the lighter of two that collide, and leaves out the lightest where there is no room', () => {
    const light = { at: 50, extent: 30, weight: 1 };
    const heavy = { at: 55, extent: 30, weight: 9 };
    const [moved, kept] = spreadLabels([light, heavy], { start: 0, end: 100, gap: 0 });
    expect(moved).toBeLessThan(31);
    expect(kept).toBeCloseTo(57.5, 6);
    expect(spreadLabels([light, heavy], { start: 40, end: 80, gap: 0 })[0]).toBeNull();
  });
});

describe('textWidth(text, size)', () => {
  it('gives all figures one width, as tabular figures have', () => {
    expect(new Set([...'0123456789'].map((figure) => textWidth(figure, 10))).size).toBe(1);
  });
});

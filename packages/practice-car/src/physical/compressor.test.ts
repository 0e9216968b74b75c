import { describe, expect, it } from 'vitest';
import { seededRandom } from '../random/index.js';
import { compressorOutletK, compressorPoint } from './compressor.js';
import { drawCar } from './draw-car.js';

describe('compressorOutletK', () => {
  // T2 = T1 {1 + [PR^k - 1] / eta}, gamma = 1.4; recomputed independently in SciPy.
  it.each([
    { inletK: 298, ratio: 1.8, efficiency: 0.72, outletK: 373.686 },
    { inletK: 298, ratio: 2.0, efficiency: 0.7, outletK: 391.237 },
    { inletK: 298.15, ratio: 2.0, efficiency: 0.75, outletK: 385.215 },
    { inletK: 293.15, ratio: 1.5, efficiency: 0.7, outletK: 344.587 },
    { inletK: 303.15, ratio: 2.5, efficiency: 0.68, outletK: 436.564 },
  ])('gives $outletK K at ratio $ratio, efficiency $efficiency', ({ inletK, ratio, efficiency, outletK }) => {
    expect(Math.abs(compressorOutletK(inletK, ratio, efficiency) - outletK)).toBeLessThan(0.001);
  });

  it('gives the textbook answer of 126.1 C for air at 70 C, 95 to 135 kPa, efficiency 0.642', () => {
    // Cengel and Boles, Thermodynamics, 8th ed., problem 7-214 (printed answers from memory; held to 0.3 K).
    expect(Math.abs(compressorOutletK(343.15, 135 / 95, 0.642) - 273.15 - 126.1)).toBeLessThan(0.5);
  });
});

describe('compressorPoint', () => {
  const { compressor } = drawCar(seededRandom(4));
  const inlet = { pressurePa: 100_000, temperatureK: 298.15 };
  const at = (ratio: number, shaftRadPerS = 14_000) =>
    compressorPoint(compressor, inlet, ratio * 1e5, shaftRadPerS);

  it('passes less air the higher the pressure it blows against, and turns back beyond its greatest head', () => {
    const flows = Array.from({ length: 40 }, (_, i) => at(1 + i * 0.08).flowKgPerS);
    flows.slice(1).forEach((flow, i) => expect(flow).toBeLessThanOrEqual(flows[i] ?? 0));
    expect(flows[0]).toBeGreaterThan(0);
    expect(flows.at(-1)).toBeLessThan(0);
  });

  it('spends exactly the heat that its outlet temperature shows', () => {
    const point = at(1.9);
    expect(point.flowKgPerS).toBeGreaterThan(0);
    expect(point.powerW / (point.flowKgPerS * 1005 * (point.outletK - 298.15))).toBeCloseTo(1, 12);
    expect(point.outletK).toBeCloseTo(compressorOutletK(298.15, 1.9, point.efficiencyRatio), 9);
  });

  it('stays finite when the wheel stands still and efficiency never leaves 0.3 to its best', () => {
    for (const shaft of [0, 100, 5000, 20_000]) {
      for (const ratio of [0.8, 1, 1.5, 3, 5]) {
        const point = at(ratio, shaft);
        expect(Number.isFinite(point.flowKgPerS) && Number.isFinite(point.powerW)).toBe(true);
        expect(point.efficiencyRatio).toBeGreaterThan(0.3);
        expect(point.efficiencyRatio).toBeLessThanOrEqual(compressor.efficiencyMaxRatio + 0.001);
      }
    }
  });
});

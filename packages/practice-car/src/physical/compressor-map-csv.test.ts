import {
  correctedFlow,
  correctedShaftSpeed,
  locateOnCompressorMap,
  readCompressorMap,
} from '@pullbook/tuning-math';
import { describe, expect, test } from 'vitest';
import { seededRandom } from '../random/index.js';
import { compressorMapCsv } from './compressor-map-csv.js';
import { drawCar } from './draw-car.js';
import { runPull } from './run-pull.js';

const options = { flowUnit: 'kgPerS', reference: 'gas-stand' } as const;

describe('compressorMapCsv(car)', () => {
  test('can be read as a compressor map whatever car is drawn', () => {
    for (let seed = 0; seed < 200; seed += 1) {
      const map = readCompressorMap(compressorMapCsv(drawCar(seededRandom(seed))), options);
      expect(map.lines).toHaveLength(7);
    }
  });

  test('tells the shaft speed of a simulated pull at its peak to 3 %', () => {
    const misses = Array.from({ length: 12 }, (_, seed) => missAtPeak(seed)).filter((miss) => miss !== null);
    expect(misses.length).toBeGreaterThanOrEqual(6);
    expect(Math.max(...misses.map(Math.abs))).toBeLessThan(0.03);
  });
});

/** Shaft speed by the map over that of the simulation, less 1; null for a pull that peaks outside the map. */
function missAtPeak(seed: number): number | null {
  const car = drawCar(seededRandom(seed));
  const conditions = { temperatureC: 20, pressureAbsKpa: 100 };
  const { trace, peakTimeS } = runPull(car, { dutyPct: 30, ambient: conditions });
  const at = trace.timeS.findIndex((timeS) => timeS >= peakTimeS);
  const [air, charge, shaft] = [trace.airKgPerS[at], trace.chargeAbsKpa[at], trace.shaftRadPerS[at]];
  if (air === undefined || charge === undefined || shaft === undefined)
    throw new Error('the trace is too short');
  const inletAbsKpa = conditions.pressureAbsKpa - (car.compressor.filterLossPaS2PerKg2 * air * air) / 1000;
  const outletAbsKpa = charge + (car.charge.coolerLossPaS2PerKg2 * air * air) / 1000;
  const inlet = { inletK: conditions.temperatureC + 273.15, inletAbsKpa };
  const map = readCompressorMap(compressorMapCsv(car), options);
  const { shaftSpeedRpm } = locateOnCompressorMap(map, {
    correctedFlowKgPerS: correctedFlow(air, inlet),
    pressureRatio: outletAbsKpa / inletAbsKpa,
  });
  if (shaftSpeedRpm === null) return null;
  return shaftSpeedRpm / correctedShaftSpeed((shaft * 30) / Math.PI, inlet) - 1;
}

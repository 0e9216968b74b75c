import { OutOfRangeError } from '@pullbook/tuning-math';
import { describe, expect, it } from 'vitest';
import { seededRandom } from '../random/index.js';
import { drawLogger, perfectLogger } from './draw-logger.js';
import { interpolateSeries, lagSeries, sampleSensor } from './sample-sensor.js';
import type { Sensor } from './sensor.js';

const timeS = Float64Array.from({ length: 1001 }, (_, i) => i / 1000);
const rows = Float64Array.from({ length: 501 }, (_, i) => i / 500);
const perfect: Sensor = {
  channel: 'boost',
  lagS: 0,
  noise: 0,
  quantum: 0,
  lowest: -Infinity,
  highest: Infinity,
  rateHz: 500,
  freezesPerMinute: 0,
};

describe('lagSeries', () => {
  it('answers a ramp as theory does: t - T (1 - exp(-t/T))', () => {
    const lagged = lagSeries(timeS, timeS, 0.1);
    for (const row of [1, 50, 100, 500, 1000]) {
      const t = row / 1000;
      expect(lagged[row]).toBeCloseTo(t - 0.1 * (1 - Math.exp(-t / 0.1)), 10);
    }
  });

  it('reaches 63.212 % of a step after one time constant and is the input itself without lag', () => {
    const step = timeS.map((t) => (t > 0 ? 1 : 0));
    const lagged = lagSeries(timeS, step, 0.2);
    expect(Math.abs((lagged[200] ?? 0) - 0.63212)).toBeLessThan(0.001);
    expect(lagSeries(timeS, step, 0)).toBe(step);
  });
});

describe('interpolateSeries', () => {
  it('is exact on a straight line and holds the ends', () => {
    const line = timeS.map((t) => 3 * t - 1);
    const found = interpolateSeries(timeS, line, Float64Array.of(-1, 0.12345, 0.9999, 5));
    [-1, -0.62965, 1.9997, 2].forEach((value, i) => expect(found[i]).toBeCloseTo(value, 10));
  });
});

describe('sampleSensor', () => {
  const ramp = { timeS, series: timeS.map((t) => 100 * t) };
  const read = (sensor: Partial<Sensor>, seed = 1) =>
    sampleSensor(ramp, { ...perfect, ...sensor }, rows, seededRandom(seed));

  it('reads the truth when nothing stands between', () => {
    read({}).forEach((value, row) => expect(value).toBeCloseTo(100 * (rows[row] ?? 0), 9));
  });

  it('reads in whole steps and never beyond its range', () => {
    const values = read({ quantum: 5, highest: 60, lowest: 10 });
    values.forEach((value) => expect(value % 5).toBe(0));
    expect(Math.max(...values)).toBe(60);
    expect(Math.min(...values)).toBe(10);
  });

  it('repeats its last value at its own slower rate', () => {
    const values = read({ rateHz: 10 });
    expect(new Set(values).size).toBe(11);
  });

  it('adds noise of the size that it says', () => {
    const values = read({ noise: 2 });
    const errors = Array.from(values, (value, row) => value - 100 * (rows[row] ?? 0));
    const deviation = Math.sqrt(errors.reduce((sum, error) => sum + error * error, 0) / errors.length);
    expect(deviation).toBeGreaterThan(1.7);
    expect(deviation).toBeLessThan(2.3);
  });

  it('freezes for a while when its channel does', () => {
    const values = read({ freezesPerMinute: 200 }, 3);
    let longest = 0;
    let run = 0;
    values.forEach((value, row) => {
      run = row > 0 && value === values[row - 1] ? run + 1 : 0;
      longest = Math.max(longest, run);
    });
    expect(longest).toBeGreaterThan(80);
  });
});

describe('drawLogger', () => {
  it('takes rates from 1 to 1000 Hz and refuses others', () => {
    for (const rateHz of [1, 37, 1000]) {
      const logger = drawLogger(rateHz, ['boost', 'engineSpeed'], seededRandom(rateHz));
      expect(logger.sensors.map((sensor) => sensor.channel)).toEqual(['boost', 'engineSpeed']);
      for (const sensor of logger.sensors) expect(sensor.rateHz).toBeLessThanOrEqual(rateHz);
    }
    expect(() => drawLogger(0.5, ['boost'], seededRandom(1))).toThrow(OutOfRangeError);
    expect(() => drawLogger(1001, ['boost'], seededRandom(1))).toThrow(OutOfRangeError);
    expect(perfectLogger(50, ['boost']).sensors[0]?.noise).toBe(0);
  });
});

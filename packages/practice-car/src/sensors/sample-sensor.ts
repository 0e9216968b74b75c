import { drawBetween } from '../random/draw-between.js';
import { drawNormal } from '../random/draw-normal.js';
import type { Random } from '../random/seeded-random.js';
import type { Sensor } from './sensor.js';

/** One step of y' = (x - y) / T while x moves in a straight line: the ramp's own answer plus a fading remainder. */
function lagStep(lagged: number, before: number, now: number, stepInLags: number): number {
  const rise = (now - before) / stepInLags;
  return now - rise + (lagged - before + rise) * Math.exp(-stepInLags);
}

/** A series through a first-order lag, exact for an input that moves in straight lines between its points. */
export function lagSeries(timeS: Float64Array, series: Float64Array, lagS: number): Float64Array {
  if (lagS <= 0) return series;
  let lagged = series[0] ?? 0;
  let before = lagged;
  let beforeS = timeS[0] ?? 0;
  return series.map((now, row) => {
    const momentS = timeS[row] ?? 0;
    if (momentS > beforeS) lagged = lagStep(lagged, before, now, (momentS - beforeS) / lagS);
    before = now;
    beforeS = momentS;
    return lagged;
  });
}

/** Values of a series at rising moments, in straight lines between its points, held beyond its ends. */
export function interpolateSeries(
  timeS: Float64Array,
  series: Float64Array,
  momentsS: Float64Array,
): Float64Array {
  let row = 0;
  return momentsS.map((moment) => {
    while (row < timeS.length - 2 && (timeS[row + 1] ?? 0) <= moment) row += 1;
    const from = timeS[row] ?? 0;
    const span = (timeS[row + 1] ?? from) - from;
    const share = span > 0 ? Math.min(1, Math.max(0, (moment - from) / span)) : 0;
    const before = series[row] ?? 0;
    return before + share * ((series[row + 1] ?? before) - before);
  });
}

function frozenUntil(momentS: number, intervalS: number, sensor: Sensor, random: Random): number {
  const chance = (sensor.freezesPerMinute / 60) * intervalS;
  return chance > 0 && random() < chance ? momentS + drawBetween(random, 0.2, 1) : -Infinity;
}

/**
 * What a sensor reads of a series at the moments of the log's rows.
 *
 * In order: lag, sampling at the sensor's own rate with the last value held between, noise, range, steps, freezes.
 *
 * @param timeS times of the series, rising
 * @param series true values
 * @param sensor what stands between
 * @param rows moments of the log's rows, rising
 * @param random stream to draw from
 */
export function sampleSensor(
  truth: { readonly timeS: Float64Array; readonly series: Float64Array },
  sensor: Sensor,
  rows: Float64Array,
  random: Random,
): Float64Array {
  const lagged = lagSeries(truth.timeS, truth.series, sensor.lagS);
  const exact = interpolateSeries(truth.timeS, lagged, rows);
  const intervalS = 1 / sensor.rateHz;
  let held = NaN;
  let dueS = -Infinity;
  let frozenS = -Infinity;
  return exact.map((value, row) => {
    const momentS = rows[row] ?? 0;
    if (momentS < frozenS || momentS < dueS - 0.5 / 1000) return held;
    dueS = Math.max(dueS + intervalS, momentS + 0.5 * intervalS);
    const noisy = value + sensor.noise * drawNormal(random);
    const ranged = Math.min(sensor.highest, Math.max(sensor.lowest, noisy));
    held = sensor.quantum > 0 ? Math.round(ranged / sensor.quantum) * sensor.quantum : ranged;
    frozenS = frozenUntil(momentS, intervalS, sensor, random);
    return held;
  });
}

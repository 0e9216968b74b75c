import { valueAt } from '../filter/series.js';
import { lineThrough, type SettledBoostMean } from './measure-settled.js';
import type { PullData } from './pull-data.js';

const LEAST_SPAN_RPM = 400;
const LEAST_SAMPLES = 5;

/**
 * Loss of boost from where it settles to the end of the pull, kPa for each 1000 r/min, by the least-squares
 * line of boost over engine speed. Positive where boost falls. null where less than 400 r/min remain.
 */
export function measureTaper(data: PullData, settled: SettledBoostMean | null): number | null {
  if (settled === null) return null;
  const points: { rpm: number; boostKpa: number }[] = [];
  data.boost.timeS.forEach((timeS, index) => {
    const rpm = timeS < settled.fromS ? null : valueAt(data.engine, timeS);
    if (rpm !== null) points.push({ rpm, boostKpa: data.boost.values[index] as number });
  });
  const speeds = points.map(({ rpm }) => rpm);
  const spanRpm = Math.max(...speeds) - Math.min(...speeds);
  if (points.length < LEAST_SAMPLES || !(spanRpm >= LEAST_SPAN_RPM)) return null;
  const line = lineThrough({
    timeS: Float64Array.from(speeds),
    values: Float64Array.from(points, ({ boostKpa }) => boostKpa),
  });
  return line(0) - line(1000);
}

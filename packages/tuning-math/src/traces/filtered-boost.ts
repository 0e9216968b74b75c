import { cleanBoost } from '../log/filter/clean-boost.js';
import { cutSeries, firstIndexFrom } from '../log/filter/series.js';
import type { LogPull } from '../log/log-analysis.js';
import type { LogSamples } from '../log/log-samples.js';
import type { PullSettings } from '../log/pull-settings.js';

/** The measurement of a pull looks at boost from this long before full load. */
const LEAD_S = 0.5;

/**
 * Boost after the documented filter, row by row, as the pulls were measured with it; NaN outside the pulls.
 *
 * @param samples of the log that the pulls were found in
 * @param pulls from `analyseSamples`
 * @param settings those of the analysis
 * @returns kPa gauge, one for each row
 * Cost: O(rows in the pulls), times the filter's window.
 */
export function filteredBoost(
  samples: Pick<LogSamples, 'timeS' | 'columns'>,
  pulls: readonly Pick<LogPull, 'startS' | 'endS'>[],
  settings: PullSettings,
): Float32Array {
  const { timeS } = samples;
  const filtered = new Float32Array(timeS.length).fill(NaN);
  for (const { startS, endS } of pulls) {
    const raw = cutSeries(timeS, samples.columns.get('boost-pressure'), startS - LEAD_S, endS);
    if (raw.values.length === 0) continue;
    const { smooth } = cleanBoost(raw, settings);
    smooth.timeS.forEach((time, index) => {
      filtered[firstIndexFrom(timeS, time)] = smooth.values[index] as number;
    });
  }
  return filtered;
}

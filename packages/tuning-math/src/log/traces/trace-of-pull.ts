import type { LogPull } from '../log-analysis.js';
import type { LogSamples } from '../log-samples.js';
import type { PullTrace } from '../pull-trace.js';
import { traceOfLog, type TraceOptions } from './trace-of-log.js';

/** How finely, and how much before and after the pull. */
export interface PullTraceOptions extends Pick<TraceOptions, 'points' | 'settings'> {
  readonly beforeS?: number;
  readonly afterS?: number;
}

const BEFORE_S = 1;
const AFTER_S = 1;

/**
 * One pull of a log for a chart, with a second before and after it, thinned so that its extremes stay.
 *
 * @param samples of the log that the pull was found in
 * @param pull from `analyseSamples` or `analyseLog`
 * @throws LogError `setting-out-of-range`
 */
export function traceOfPull(
  samples: LogSamples,
  pull: Pick<LogPull, 'startS' | 'endS'>,
  options: PullTraceOptions = {},
): PullTrace {
  const { beforeS = BEFORE_S, afterS = AFTER_S, ...how } = options;
  return traceOfLog(samples, { ...how, fromS: pull.startS - beforeS, toS: pull.endS + afterS });
}

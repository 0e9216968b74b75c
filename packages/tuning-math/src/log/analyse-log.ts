import { analyseSamples } from './analyse-samples.js';
import type { LogAnalysis } from './log-analysis.js';
import type { LogOptions } from './log-options.js';
import { readLog } from './read-log.js';

/**
 * From a log file to judged pulls in one call: reads, recognises columns and units, finds full-load pulls,
 * measures peak, settled boost, overshoot, rise time and onset speed, and says of each whether it may be
 * used, or why not.
 *
 * @param input text or bytes of the file (CSV and what loggers make of it)
 * @param options what is known beside the file: target, air pressure, gearing, rate, recipe, settings
 * @throws LogError with a code and a plain sentence: empty file, not text, no rows, no pressure column, no time
 * Cost: O(bytes). Definitions, formulas and sources: docs/logs.md.
 */
export function analyseLog(input: string | Uint8Array, options: LogOptions = {}): LogAnalysis {
  return analyseSamples(readLog(input, options), options);
}

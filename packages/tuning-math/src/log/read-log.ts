import type { LogOptions } from './log-options.js';
import type { LogSamples } from './log-samples.js';
import { createLogReader } from './reading/create-log-reader.js';

/**
 * Samples of a log that is in memory as a whole. For files, push chunks into `createLogReader`.
 *
 * @param input text or bytes of the file
 * @throws LogError with a code and a plain sentence for a file that cannot be a log
 */
export function readLog(input: string | Uint8Array, options: LogOptions = {}): LogSamples {
  const reader = createLogReader({ byteCount: input.length, ...options });
  reader.push(input);
  return reader.finish();
}

import { analyseSamples, createLogReader, traceOfPull, type LogOptions } from '@pullbook/tuning-math';
import type { LogAnalysis, PullTrace } from '@pullbook/tuning-math';
import { createReadStream } from 'node:fs';
import { createGunzip } from 'node:zlib';

/** What is computed from one log. Plain data. */
export interface AnalysedLog {
  readonly analysis: LogAnalysis;
  /** One for each found pull, in order. */
  readonly traces: readonly PullTrace[];
}

/**
 * Analyses a log in a file, piece by piece. Takes seconds for large ones: run it off the request thread.
 *
 * @param file path of the log, compressed by gzip
 * @throws LogError for what cannot be a log
 */
export async function analyseFile(file: string, options: LogOptions): Promise<AnalysedLog> {
  const reader = createLogReader(options);
  const pieces: AsyncIterable<Uint8Array> = createReadStream(file).pipe(createGunzip());
  for await (const piece of pieces) reader.push(piece);
  const samples = reader.finish();
  const analysis = analyseSamples(samples, options);
  return { analysis, traces: analysis.pulls.map((pull) => traceOfPull(samples, pull)) };
}

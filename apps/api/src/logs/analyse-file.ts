import {
  analyseSamples,
  completeSettings,
  createLogReader,
  matchRecipe,
  traceOfPull,
  type KnownRecipe,
  type LogAnalysis,
  type LogOptions,
  type LogSamples,
  type PullTrace,
} from '@pullbook/tuning-math';
import { createReadStream } from 'node:fs';
import { createGunzip } from 'node:zlib';

/** A log to analyse and what is known of it. Plain data. */
export interface FileToAnalyse {
  /** Path of the log, compressed by gzip. */
  readonly file: string;
  /** How large it is when it is not compressed: spares memory, and changes no figure. */
  readonly byteCount: number | null;
  readonly options: LogOptions;
  /** The workshop's recipes: looked through for one of the log's shape where the options hold none. */
  readonly recipes: readonly KnownRecipe[];
}

/** What is computed from one log, with all that it takes to compute it again. Plain data. */
export interface AnalysedLog {
  readonly analysis: LogAnalysis;
  /** One for each found pull, in order. */
  readonly traces: readonly PullTrace[];
  /** As they were used: with the recipe that was found, and with every setting. */
  readonly options: LogOptions;
  /** Of the recipe that was found for the log's shape. */
  readonly recipeId: string | null;
}

/**
 * Analyses a log in a file, piece by piece. Takes seconds for large ones: run it off the request thread. The same file
 * with the options that it gives back, and no recipes, gives the same result to the last digit.
 *
 * @throws LogError for what cannot be a log
 */
export async function analyseFile({
  file,
  byteCount,
  options,
  recipes,
}: FileToAnalyse): Promise<AnalysedLog> {
  const settings = completeSettings(options.settings);
  const pieces = createReadStream(file).pipe(createGunzip());
  const { head, rest } = await splitHead(pieces);
  const found = options.recipe ? null : matchRecipe(head, recipes);
  const used: LogOptions = { ...options, recipe: options.recipe ?? found?.recipe ?? null, settings };
  const samples = await readSamples({ ...used, byteCount }, head, rest);
  const analysis = analyseSamples(samples, used);
  const traces = analysis.pulls.map((pull) => traceOfPull(samples, pull, { settings }));
  return { analysis, traces, options: used, recipeId: found?.id ?? null };
}

async function readSamples(
  options: LogOptions,
  head: Uint8Array,
  rest: AsyncIterable<Uint8Array>,
): Promise<LogSamples> {
  const reader = createLogReader(options);
  reader.push(head);
  for await (const piece of rest) reader.push(piece);
  return reader.finish();
}

/** A recipe is looked for in so much of a log. */
const HEAD_BYTES = 1 << 16;

interface SplitPieces {
  readonly head: Uint8Array;
  readonly rest: AsyncIterable<Uint8Array>;
}

/** The first pieces as one, and those that follow. */
async function splitHead(pieces: AsyncIterable<Uint8Array>): Promise<SplitPieces> {
  const iterator = pieces[Symbol.asyncIterator]();
  const first: Uint8Array[] = [];
  let byteCount = 0;
  while (byteCount < HEAD_BYTES) {
    const { done, value } = await iterator.next();
    if (done === true) break;
    first.push(value);
    byteCount += value.byteLength;
  }
  return { head: Buffer.concat(first), rest: { [Symbol.asyncIterator]: () => iterator } };
}

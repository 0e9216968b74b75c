import type { TraceChannel } from '@pullbook/contracts';
import {
  baseUnitOf,
  createLogReader,
  filteredBoost,
  levelShapes,
  type LogAnalysis,
  type LogChannel,
  type LogOptions,
  type LogSamples,
} from '@pullbook/tuning-math';
import { createReadStream, statSync } from 'node:fs';
import { createGunzip } from 'node:zlib';
import { channelFacts } from './channel-facts.js';
import { channelName } from './channel-names.js';
import { TileWriter } from './write-tiles.js';

/** What a trace file is made from. Plain data. */
export interface TraceTask {
  /** Path of the log, compressed by gzip. */
  readonly logFile: string;
  /** Path of a file that is not there yet. */
  readonly traceFile: string;
  readonly options: LogOptions;
  readonly analysis: Pick<LogAnalysis, 'channels' | 'rowCount' | 'pulls' | 'provenance'>;
}

/** Samples that are in memory at the same moment, whatever the log's size: beside the times and the pressures. */
const MOST_SAMPLES = 16 << 20;

/**
 * Reads a log and writes its traces: once for as many columns as fit into memory together. Takes seconds for large
 * logs: run it off the request thread.
 *
 * @param onProgress told the share that is done, 0 to 1
 * @throws LogError for what cannot be a log
 * Cost: O(bytes), times the number of rounds.
 */
export async function writeTraceFile(task: TraceTask, onProgress: (share: number) => void): Promise<void> {
  const rounds = roundsOf(task);
  const writer = new TileWriter(task.traceFile);
  const channels: TraceChannel[] = [];
  let times = new Float64Array(0);
  for (const [round, kept] of rounds.entries()) {
    const samples = await readRound(task, kept, (share) => onProgress((round + 0.7 * share) / rounds.length));
    const add = (channel: NamedChannel, values: Float32Array): void => {
      writer.addChannel(values);
      channels.push({ ...channel, ...channelFacts(values, samples.timeS) });
      onProgress(
        (round + 0.7 + (0.3 * channels.length) / (1 + task.analysis.channels.length)) / rounds.length,
      );
    };
    if (round === 0) {
      times = Float64Array.from(samples.timeS);
      writer.addTimes(times, levelShapes(times.length));
      addBoost(task, samples, add);
    }
    addLogged(samples, kept, add);
  }
  writer.finish({
    rowCount: times.length,
    fromS: times[0] ?? 0,
    toS: times.at(-1) ?? 0,
    levels: levelShapes(times.length),
    channels,
  });
}

type NamedChannel = Pick<TraceChannel, 'name' | 'header' | 'quantity' | 'unit'>;
type AddChannel = (channel: NamedChannel, values: Float32Array) => void;

/** Columns of the file, in as few rounds as memory allows. */
function roundsOf({ analysis }: TraceTask): number[][] {
  const columns = analysis.channels.filter(({ quantity }) => quantity !== 'time').map(({ column }) => column);
  const atOnce = Math.max(1, Math.floor(MOST_SAMPLES / Math.max(1, analysis.rowCount)));
  const rounds: number[][] = [];
  for (let first = 0; first < columns.length; first += atOnce) {
    rounds.push(columns.slice(first, first + atOnce));
  }
  return rounds;
}

async function readRound(
  { logFile, options }: TraceTask,
  kept: readonly number[],
  onRead: (share: number) => void,
): Promise<LogSamples> {
  const reader = createLogReader({ ...options, keptColumns: new Set(kept) });
  const file = createReadStream(logFile);
  const { size } = statSync(logFile);
  const pieces: AsyncIterable<Uint8Array> = file.pipe(createGunzip());
  for await (const piece of pieces) {
    reader.push(piece);
    onRead(file.bytesRead / size);
  }
  return reader.finish();
}

/** Boost as it was settled, and what the filter made of it in the pulls: what the figures of a pull were taken from. */
function addBoost({ analysis }: TraceTask, samples: LogSamples, add: AddChannel): void {
  const boost = samples.columns.get('boost-pressure');
  if (boost === undefined) return;
  const column = samples.channels.find((channel) => isBoost(samples, channel));
  const common = { quantity: 'boost-pressure', unit: 'kPa' };
  add({ ...common, name: 'Boost', header: column?.header ?? null }, boost);
  const filtered = filteredBoost(samples, analysis.pulls, analysis.provenance.settings);
  add({ ...common, name: 'Boost, filtered', header: null }, filtered);
}

function addLogged(samples: LogSamples, kept: readonly number[], add: AddChannel): void {
  for (const channel of samples.channels) {
    const values = samples.byPosition.get(channel.column);
    if (values === undefined || !kept.includes(channel.column) || isBoost(samples, channel)) continue;
    const { quantity, header } = channel;
    // The boost is there already; a second column of that name is told by its head.
    const name = channelName(quantity === 'boost-pressure' ? 'unknown' : quantity, header);
    add({ name, header, quantity, unit: baseUnitOf(channel) }, values);
  }
}

function isBoost(
  { boostSource, byPosition, columns }: LogSamples,
  { column, quantity }: LogChannel,
): boolean {
  if (boostSource !== 'gauge-column' || quantity !== 'boost-pressure') return false;
  return byPosition.get(column) === columns.get('boost-pressure');
}

import type { ScannedLog } from './scanned-log.js';
import { CHANNEL_QUANTITIES, type ChannelQuantity } from '../channel-quantities.js';
import type { LogNotice } from '../log-notice.js';
import { LogError } from '../log-error.js';
import type { LogOptions } from '../log-options.js';
import type { LogChannel, LogLayout, LogSamples } from '../log-samples.js';
import { columnFacts } from './column-facts.js';
import { describeColumn } from './describe-column.js';
import type { ColumnClaim } from './recognise-columns.js';
import { logShape } from '../reading/log-shape.js';
import { sampleCells } from '../reading/sample-cells.js';
import { rowNotices } from './row-notices.js';
import { settleBoost } from './settle-boost.js';
import { settleColumn, type SettledColumn } from './settle-column.js';
import { settleRowTimes } from './settle-row-times.js';
import { medianStep } from './settle-time.js';

/**
 * Samples in base units with times that rise, from scanned columns. Settles units and references by name,
 * print and values, and says in warnings what it had to assume or leave out.
 *
 * @throws LogError `no-rows`, `no-pressure-channel`, `no-time`
 */
export function assembleSamples(log: ScannedLog, options: LogOptions): LogSamples {
  if (log.columns.rowCount === 0) {
    throw new LogError('no-rows', 'the log has no rows of numbers', 'check that the logger was recording');
  }
  refuseWrongWidth(log);
  const times = settleRowTimes(log, options);
  const settled = settleColumns(log, times.keep);
  const boost = settleBoost(settled, options, headersOf(log));
  const columns = new Map<ChannelQuantity, Float32Array>([['boost-pressure', boost.values]]);
  for (const column of settled) {
    if (!columns.has(column.claim.quantity)) columns.set(column.claim.quantity, column.values);
  }
  const step = medianStep(times.timeS);
  return {
    channels: log.claims.map((claim) => ({
      ...channelOf(log, claim, settled, times.channel),
      samples: sampleCells(log.layout, claim.column),
    })),
    layout: layoutOf(log),
    shape: logShape(log.layout),
    timeS: times.timeS,
    timeOriginS: times.timeOriginS,
    columns,
    byPosition: new Map(settled.map(({ claim, values }) => [claim.column, values])),
    boostDoubt: boost.doubt,
    boostSource: boost.source,
    airUncertaintyKpa: boost.airUncertaintyKpa,
    sampleRateHz: step > 0 ? 1 / step : null,
    rowCount: log.columns.rowCount,
    warnings: [...rowNotices(log.counts), ...times.notices, ...boost.notices, ...settled.flatMap(noticesOf)],
  };
}

function settleColumns(log: ScannedLog, keep: Uint32Array | null): SettledColumn[] {
  return log.claims.flatMap((claim) => {
    const place = log.places[claim.column] ?? -1;
    if (place < 1) return [];
    const raw = log.columns.take(place);
    return [settleColumn(claim, keep === null ? raw : Float32Array.from(keep, (row) => raw[row] as number))];
  });
}

/** More cells than headers in nearly all rows: an unquoted decimal comma would shift every value. */
function refuseWrongWidth(log: ScannedLog): void {
  const { counts, layout } = log;
  if (!layout.hasHeader || counts.longRows <= counts.rows / 2) return;
  throw new LogError(
    'no-table',
    'the rows have more values than there are headers, so values cannot be told apart',
    'is a decimal comma used in a comma-separated file? Say delimiter and decimal mark in the channel recipe, or export with semicolons',
  );
}

function headersOf(log: ScannedLog): readonly string[] {
  return log.layout.hasHeader ? log.layout.headers : [];
}

function noticesOf(column: SettledColumn): readonly LogNotice[] {
  return column.notices;
}

function channelOf(
  log: ScannedLog,
  claim: ColumnClaim,
  settled: readonly SettledColumn[],
  timeChannel: LogChannel | null,
): LogChannel {
  if (claim.quantity === 'time' && timeChannel !== null) return timeChannel;
  const column = settled.find((candidate) => candidate.claim.column === claim.column);
  if (column !== undefined) return column.channel;
  const cells = log.layout.sampleRows.map((row) => Number(row[claim.column]?.replace(',', '.') || NaN));
  return describeColumn(claim, columnFacts(Float64Array.from(cells)), {
    unit: claim.unit?.unit ?? CHANNEL_QUANTITIES.unknown,
    certain: claim.quantity !== 'unknown' && claim.unit !== null,
    rowCount: cells.length,
  });
}

function layoutOf({ layout, encoding }: ScannedLog): LogLayout {
  const commas = layout.decimalMarks.filter((mark) => mark === ',').length;
  return {
    encoding,
    delimiter: layout.delimiter,
    decimalMark: commas * 2 > layout.decimalMarks.length ? ',' : '.',
    preambleLineCount: layout.preambleLineCount,
    hasHeader: layout.hasHeader,
    hasUnitRow: layout.hasUnitRow,
  };
}

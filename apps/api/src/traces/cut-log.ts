import type { TraceCutQuery } from '@pullbook/contracts';
import { existsSync } from 'node:fs';
import type { Actor } from '../plumbing/actor.js';
import { DomainError } from '../plumbing/domain-error.js';
import type { ObjectStore } from '../plumbing/object-store.js';
import { cutCsv, rowsBetween } from './cut-csv.js';
import { loadTracedLog } from './load-traced-log.js';
import { openTraceFile } from './open-trace-file.js';
import { tracePlace } from './trace-place.js';

/** Cells of one cut-out; more than a spreadsheet opens gladly. */
const MOST_CELLS = 4_000_000;

/** A stretch of a log on its way out. */
export interface CutOut {
  readonly fileName: string;
  readonly pieces: AsyncIterable<string>;
}

/**
 * A stretch of a log as CSV.
 *
 * @throws DomainError not-found; conflict where the traces are not made yet; invalid-request for a stretch without
 *   rows or a channel that is not there; too-large
 */
export async function cutLog(
  actor: Actor,
  objects: ObjectStore,
  logId: string,
  query: TraceCutQuery,
): Promise<CutOut> {
  const log = await loadTracedLog(actor, logId);
  const place = tracePlace(objects, log.sha256, log.build);
  if (!existsSync(place))
    throw new DomainError('conflict', 'open the log first, so that its traces are made');
  const file = await openTraceFile(place);
  const channels = query.channels?.split(',').map(Number) ?? [...file.facts.channels.keys()];
  const missing = channels.find((channel) => channel >= file.facts.channels.length);
  if (missing !== undefined) throw wrong('channels', `this log has no channel ${missing}`);
  const [fromRow, endRow] = await rowsBetween(file, query.fromS, query.toS);
  if (fromRow >= endRow) throw wrong('fromS', 'there is no sample between these moments');
  if ((endRow - fromRow) * (channels.length + 1) > MOST_CELLS) {
    throw new DomainError('too-large', 'so long a cut-out is not written; zoom in or choose fewer channels');
  }
  const { pressure, temperature } = query;
  return {
    fileName: fileName(log.fileName, query),
    pieces: cutCsv(file, { fromRow, endRow, channels, units: { pressure, temperature } }),
  };
}

function wrong(field: string, message: string): DomainError {
  return new DomainError('invalid-request', message, { errors: [{ field, message }] });
}

/** The log's name with the stretch behind it, in signs that every system takes. */
function fileName(logName: string, { fromS, toS }: TraceCutQuery): string {
  const stem = logName.replace(/[.][^.]*$/, '').replace(/[^\w-]+/g, '-');
  return `${stem.slice(0, 80) || 'log'}-${fromS.toFixed(2)}-to-${toS.toFixed(2)}-s.csv`;
}

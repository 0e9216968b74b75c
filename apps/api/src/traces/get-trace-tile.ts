import type { TraceTileParams } from '@pullbook/contracts';
import { existsSync } from 'node:fs';
import type { Actor } from '../plumbing/actor.js';
import { DomainError } from '../plumbing/domain-error.js';
import type { ObjectStore } from '../plumbing/object-store.js';
import { openTraceFile } from './open-trace-file.js';
import { tracePlace } from './trace-place.js';

/**
 * One tile of a log's traces, compressed by gzip. It never changes under its address.
 *
 * @throws DomainError not-found for a log, a build or a tile that is not there
 */
export async function getTraceTile(
  { db }: Actor,
  objects: ObjectStore,
  { id, build, channel, level, tile }: TraceTileParams,
): Promise<Buffer> {
  const log = await db.log.findFirst({ where: { id }, select: { sha256: true } });
  if (log === null) throw new DomainError('not-found', 'this workshop has no such log');
  const place = tracePlace(objects, log.sha256, build);
  if (!existsSync(place))
    throw new DomainError('not-found', 'these traces are not there; ask for the log anew');
  const file = await openTraceFile(place);
  const bytes = await file.readTile(channel === 'time' ? 0 : channel + 1, level, tile);
  if (bytes === null) throw new DomainError('not-found', 'the traces of this log have no such tile');
  return bytes;
}

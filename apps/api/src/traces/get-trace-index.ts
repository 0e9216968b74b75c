import type { TraceAnswer } from '@pullbook/contracts';
import { TILE_BINS } from '@pullbook/tuning-math';
import { existsSync } from 'node:fs';
import { setTimeout as wait } from 'node:timers/promises';
import type { Actor } from '../plumbing/actor.js';
import { presentNotice } from './present-notice.js';
import { DomainError } from '../plumbing/domain-error.js';
import type { ObjectStore } from '../plumbing/object-store.js';
import { buildOffThread } from './build-off-thread.js';
import { findTracePulls } from './find-trace-pulls.js';
import { loadTracedLog, type TracedLog } from './load-traced-log.js';
import { openTraceFile } from './open-trace-file.js';
import { tracePlace } from './trace-place.js';

/** Most logs are short: whoever waits so long need not ask twice. */
const PATIENCE_MS = 700;

/**
 * What is needed to draw a log. The first time its traces are made, off the request thread: until they are there the
 * answer says how far they are.
 *
 * @throws DomainError not-found; log-unreadable; gone where the bytes of the log are not in the store
 */
export async function getTraceIndex(actor: Actor, objects: ObjectStore, logId: string): Promise<TraceAnswer> {
  const log = await loadTracedLog(actor, logId);
  const place = tracePlace(objects, log.sha256, log.build);
  if (!existsSync(place)) {
    const share = await makeTraces(objects, log, place);
    if (share !== null) return { state: 'building', share };
  }
  const { facts } = await openTraceFile(place);
  const { rowCount, fromS, toS, levels, channels } = facts;
  const { analysis } = log;
  return {
    state: 'ready',
    build: log.build,
    log: { id: log.id, fileName: log.fileName, recordedAt: log.recordedAt.toISOString() },
    visitId: log.visitId,
    carId: log.carId,
    plate: log.plate,
    ...{ rowCount, fromS, toS, levels: [...levels], channels: [...channels] },
    timeOriginS: analysis.timeOriginS,
    sampleRateHz: analysis.sampleRateHz,
    tileBins: TILE_BINS,
    pulls: await findTracePulls(actor, log),
    warnings: analysis.warnings.map(presentNotice),
  };
}

/** Null when the traces are made, or the share that is. */
async function makeTraces(objects: ObjectStore, log: TracedLog, traceFile: string): Promise<number | null> {
  const { sha256, options, analysis } = log;
  const logFile = objects.fileOf(sha256);
  if (!existsSync(logFile)) throw new DomainError('gone', 'the bytes of this log are no longer in the store');
  const build = buildOffThread({ logFile, traceFile, options, analysis });
  const first = await Promise.race([build.made, wait(PATIENCE_MS, 'late' as const, { ref: false })]);
  return first === 'late' ? build.share : null;
}

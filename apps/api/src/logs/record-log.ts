import type { Log } from '@pullbook/contracts';
import type { LogOptions } from '@pullbook/tuning-math';
import type { Actor } from '../plumbing/actor.js';
import { DomainError } from '../plumbing/domain-error.js';
import type { ObjectStore, ReceivedObject } from '../plumbing/object-store.js';
import { recordEvent } from '../plumbing/record-event.js';
import { holdOpenVisit } from '../tuning-sessions/hold-open-visit.js';
import { loadSession, type SessionRecord } from '../tuning-sessions/load-session.js';
import type { AnalysedLog } from './analyse-file.js';
import { analyseOffThread } from './analyse-off-thread.js';
import { loadLogs } from './load-log.js';
import { logOptionsOfCar } from './log-options-of-car.js';
import { logPieces } from './log-pieces.js';
import { presentLog } from './present-log.js';
import type { UploadedFile } from './uploaded-file.js';

/** A log on record and the visit that it belongs to. */
export interface RecordedLog {
  readonly log: Log;
  readonly visitId: string;
}

/**
 * Takes a log file into a tuning session: original bytes into the object store, what was computed into the book. The
 * same bytes a second time give the log that is there. Of a file that cannot be read nothing stays behind.
 *
 * @throws DomainError not-found, visit-closed, too-large, log-unreadable
 */
export async function recordLog(
  actor: Actor,
  objects: ObjectStore,
  sessionId: string,
  { fileName, pieces }: UploadedFile,
): Promise<RecordedLog> {
  const session = await loadSession(actor.db, sessionId);
  if (!session.visit.isOpen)
    throw new DomainError('visit-closed', 'this visit is closed; it takes no more logs');
  const received = await objects.receive(logPieces(pieces));
  try {
    const known = await findKnown(actor, sessionId, received.sha256);
    const log = known ?? (await takeIn(actor, session, received, fileName));
    return { log, visitId: session.visit.id };
  } finally {
    // Once kept it lies elsewhere, and there is nothing left to drop.
    await received.drop();
  }
}

async function findKnown(actor: Actor, tuningSessionId: string, sha256: string): Promise<Log | null> {
  const [known] = await loadLogs(actor.db, { tuningSessionId, sha256 });
  return known === undefined ? null : presentLog(known, true);
}

async function takeIn(
  actor: Actor,
  session: SessionRecord,
  received: ReceivedObject,
  fileName: string,
): Promise<Log> {
  const analysed = await analyseOffThread(received.file, await readOptions(actor, session));
  // First the bytes, then the book: it never speaks of bytes that are not there.
  await received.keep();
  return actor.db.$transaction(async (tx) => {
    await holdOpenVisit(tx, session.visit.id);
    const [meanwhile] = await loadLogs(tx, { tuningSessionId: session.id, sha256: received.sha256 });
    if (meanwhile !== undefined) return presentLog(meanwhile, true);
    const row = await tx.log.create({ data: logRow(actor, session.id, { received, fileName, analysed }) });
    await recordEvent(tx, actor, {
      action: 'log-recorded',
      noun: 'log',
      recordId: row.id,
      summary: `took in ${row.fileName} with ${analysed.analysis.pulls.length} pulls`,
      detail: { tuningSessionId: session.id, sha256: received.sha256, byteCount: received.byteCount },
    });
    return presentLog({ ...row, pulls: [] });
  });
}

async function readOptions({ db }: Actor, { visit, air }: SessionRecord): Promise<LogOptions> {
  return logOptionsOfCar(await db.car.findUniqueOrThrow({ where: { id: visit.carId } }), air);
}

interface NewLog {
  readonly received: ReceivedObject;
  readonly fileName: string;
  readonly analysed: AnalysedLog;
}

function logRow(actor: Actor, tuningSessionId: string, { received, fileName, analysed }: NewLog) {
  return {
    tuningSessionId,
    fileName: fileName.slice(-200),
    byteCount: received.byteCount,
    sha256: received.sha256,
    // Through JSON, as plain data must be for both databases.
    analysis: JSON.parse(JSON.stringify(analysed.analysis)),
    traces: JSON.parse(JSON.stringify(analysed.traces)),
    analysisVersion: analysed.analysis.provenance.codeVersion,
    recordedBy: actor.name,
    recordedAt: actor.now(),
  };
}

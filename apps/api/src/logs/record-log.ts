import type { ChannelReading, Log } from '@pullbook/contracts';
import { checkReading } from '../channel-recipes/check-reading.js';
import { readLogSettings } from '../log-settings/read-log-settings.js';
import type { Actor } from '../plumbing/actor.js';
import { DomainError } from '../plumbing/domain-error.js';
import type { ObjectStore, ReceivedObject } from '../plumbing/object-store.js';
import { recordEvent } from '../plumbing/record-event.js';
import { holdOpenVisit } from '../tuning-sessions/hold-open-visit.js';
import { loadSession, type SessionRecord } from '../tuning-sessions/load-session.js';
import type { FileToAnalyse } from './analyse-file.js';
import { analyseOffThread } from './analyse-off-thread.js';
import { knownRecipes } from './known-recipes.js';
import { loadLog, loadLogs } from './load-log.js';
import { logPieces } from './log-pieces.js';
import { logVersionRow } from './log-version-row.js';
import { presentLog } from './present-log.js';
import { readOptions } from './read-options.js';
import type { UploadedFile } from './uploaded-file.js';

interface NamedFile {
  readonly fileName: string;
  readonly reading: ChannelReading | null;
}

/** A log on record and the visit that it belongs to. */
export interface RecordedLog {
  readonly log: Log;
  readonly visitId: string;
}

/**
 * Takes a log file into a tuning session: original bytes into the object store, what was computed into the book. The
 * same bytes a second time give the log that is there. Of a file that cannot be read nothing stays behind.
 *
 * @throws DomainError not-found, visit-closed, too-large, log-unreadable, invalid-request for a unit that cannot be
 */
export async function recordLog(
  actor: Actor,
  objects: ObjectStore,
  sessionId: string,
  { fileName, pieces, reading = null }: UploadedFile & { readonly reading?: ChannelReading | null },
): Promise<RecordedLog> {
  if (reading) checkReading(reading, 'reading');
  const session = await loadSession(actor.db, sessionId);
  if (!session.visit.isOpen)
    throw new DomainError('visit-closed', 'this visit is closed; it takes no more logs');
  const received = await objects.receive(logPieces(pieces));
  try {
    const known = await findKnown(actor, sessionId, received.sha256);
    const log =
      known ?? (await takeIn(actor, session, received, { fileName: fileName.slice(-200), reading }));
    return { log, visitId: session.visit.id };
  } finally {
    // Once kept it lies elsewhere, and there is nothing left to drop.
    await received.drop();
  }
}

async function findKnown(actor: Actor, tuningSessionId: string, sha256: string): Promise<Log | null> {
  const [known] = await loadLogs(actor.db, { tuningSessionId, sha256 });
  return known === undefined ? null : presentLog(actor.db, known, { alreadyOnRecord: true });
}

async function takeIn(
  actor: Actor,
  session: SessionRecord,
  received: ReceivedObject,
  { fileName, reading }: NamedFile,
): Promise<Log> {
  const analysed = await analyseOffThread(await planAnalysis(actor, session, received, reading));
  // First the bytes, then the book: it never speaks of bytes that are not there.
  await received.keep();
  return actor.db.$transaction(async (tx) => {
    await holdOpenVisit(tx, session.visit.id);
    const [meanwhile] = await loadLogs(tx, { tuningSessionId: session.id, sha256: received.sha256 });
    if (meanwhile !== undefined) return presentLog(tx, meanwhile, { alreadyOnRecord: true });
    const { id: logId } = await tx.log.create({ data: logRow(actor, session.id, received, fileName) });
    const { recipeId } = analysed;
    await tx.logVersion.create({
      data: logVersionRow(actor, analysed, { logId, number: 1, recipeId, reason: '' }),
    });
    await recordEvent(tx, actor, {
      action: 'log-recorded',
      noun: 'log',
      recordId: logId,
      summary: `took in ${fileName} with ${analysed.analysis.pulls.length} pulls`,
      detail: { tuningSessionId: session.id, sha256: received.sha256, byteCount: received.byteCount },
    });
    return presentLog(tx, await loadLog(tx, logId));
  });
}

async function planAnalysis(
  actor: Actor,
  session: SessionRecord,
  { file, byteCount }: ReceivedObject,
  reading: ChannelReading | null,
): Promise<FileToAnalyse> {
  const { settings } = await readLogSettings(actor.db, actor.workshopId);
  const options = { ...(await readOptions(actor, session)), settings, recipe: reading };
  return { file, byteCount, options, recipes: await knownRecipes(actor.db) };
}

function logRow(
  actor: Actor,
  tuningSessionId: string,
  { byteCount, sha256 }: ReceivedObject,
  fileName: string,
) {
  return { tuningSessionId, fileName, byteCount, sha256, recordedBy: actor.name, recordedAt: actor.now() };
}

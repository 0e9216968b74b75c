import { ChannelReading, type Log, type LogAnalyse, type PullSettings } from '@pullbook/contracts';
import type { LogOptions } from '@pullbook/tuning-math';
import { checkReading } from '../channel-recipes/check-reading.js';
import { readLogSettings } from '../log-settings/read-log-settings.js';
import type { Actor } from '../plumbing/actor.js';
import { DomainError } from '../plumbing/domain-error.js';
import type { ObjectStore } from '../plumbing/object-store.js';
import { recordEvent } from '../plumbing/record-event.js';
import { loadSession } from '../tuning-sessions/load-session.js';
import type { FileToAnalyse } from './analyse-file.js';
import { analyseOffThread } from './analyse-off-thread.js';
import { knownRecipes } from './known-recipes.js';
import { loadLog, type LogRecord } from './load-log.js';
import { readOptions } from './read-options.js';
import { logVersionRow } from './log-version-row.js';
import { presentLog } from './present-log.js';

/**
 * Computes a log anew from its original bytes. The result becomes its newest version; those before it stay as they
 * are, and so do pulls that were taken from them.
 *
 * @throws DomainError not-found, log-unreadable, invalid-request for a unit that cannot be, conflict where somebody
 *   else did the same meanwhile
 */
export async function analyseAgain(
  actor: Actor,
  objects: ObjectStore,
  logId: string,
  input: LogAnalyse,
): Promise<Log> {
  if (input.reading) checkReading(input.reading, 'reading');
  const row = await loadLog(actor.db, logId);
  const task = await planAnalysis(actor, row, input);
  const analysed = await analyseOffThread({ ...task, file: objects.fileOf(row.sha256) });
  const recipeId = analysed.recipeId ?? (input.reading === undefined ? row.newest.recipeId : null);
  const number = row.newest.number + 1;
  const reason = input.reason ?? '';
  return actor.db.$transaction(async (tx) => {
    const { count } = await tx.log.updateMany({
      where: { id: logId, version: row.newest.number },
      data: { version: number },
    });
    if (count === 0)
      throw new DomainError('conflict', 'somebody computed this log anew meanwhile; look again');
    await tx.logVersion.create({ data: logVersionRow(actor, analysed, { logId, number, recipeId, reason }) });
    await recordEvent(tx, actor, {
      action: 'log-analysed-anew',
      noun: 'log',
      recordId: logId,
      summary: `computed ${row.fileName} anew: ${analysed.analysis.pulls.length} pulls`,
      detail: { number, ...input },
    });
    return presentLog(tx, await loadLog(tx, logId));
  });
}

type Plan = Omit<FileToAnalyse, 'file'>;

async function planAnalysis(actor: Actor, row: LogRecord, input: LogAnalyse): Promise<Plan> {
  const recorded = row.newest.options as LogOptions;
  const told = toldReading(recorded, input.reading);
  const wantsRecipe = input.reading === null;
  const base = input.settings === 'recorded' ? recorded : await freshOptions(actor, row);
  if (input.settings === 'recorded' && recorded.settings === undefined) {
    throw new DomainError(
      'conflict',
      'this log was analysed before settings were recorded; use those of the workshop',
    );
  }
  return {
    byteCount: row.byteCount,
    options: { ...base, recipe: told },
    recipes: wantsRecipe ? await knownRecipes(actor.db) : [],
  };
}

/** Left out: as it was read before. Null: by recipe or recognition. */
function toldReading(recorded: LogOptions, reading: LogAnalyse['reading']): ChannelReading | null {
  if (reading !== undefined) return reading;
  return ChannelReading.nullish().parse(recorded.recipe) ?? null;
}

async function freshOptions(actor: Actor, row: LogRecord): Promise<LogOptions & { settings: PullSettings }> {
  const session = await loadSession(actor.db, row.tuningSessionId);
  const { settings } = await readLogSettings(actor.db, actor.workshopId);
  return { ...(await readOptions(actor, session)), settings };
}

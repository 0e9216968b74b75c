import type { LogSettings, PullSettings } from '@pullbook/contracts';
import { Prisma } from '@pullbook/database';
import { completeSettings, DEFAULT_PULL_SETTINGS, LogError } from '@pullbook/tuning-math';
import type { Actor } from '../plumbing/actor.js';
import { DomainError } from '../plumbing/domain-error.js';
import { changedMeanwhile } from '../plumbing/etags.js';
import { recordEvent } from '../plumbing/record-event.js';
import { withoutGaps } from '../plumbing/without-gaps.js';
import { getLogSettings } from './get-log-settings.js';

/**
 * Sets what the workshop's log analysis holds to from now on; results on record keep the settings that made them.
 *
 * @param revision the one that the sender has seen
 * @param changes only these differ from the default settings
 * @throws DomainError invalid-request naming a setting out of its range, changed-meanwhile
 */
export function changeLogSettings(
  actor: Actor,
  revision: number,
  changes: { readonly [Name in keyof PullSettings]?: PullSettings[Name] | undefined },
): Promise<LogSettings> {
  const logSettings = onlyChanges(withoutGaps(changes) as Partial<PullSettings>);
  return actor.db.$transaction(async (tx) => {
    const { count } = await tx.workshop.updateMany({
      where: { id: actor.workshopId, logSettingsRevision: revision },
      data: {
        logSettings: Object.keys(logSettings).length === 0 ? Prisma.DbNull : logSettings,
        logSettingsRevision: { increment: 1 },
      },
    });
    if (count === 0) throw changedMeanwhile('set of thresholds');
    await recordEvent(tx, actor, {
      action: 'log-settings-changed',
      noun: 'workshop',
      recordId: actor.workshopId,
      summary: 'changed the thresholds of the log analysis',
      detail: logSettings,
    });
    return getLogSettings(tx, actor.workshopId);
  });
}

/** What is set to its default is no change: it follows the default of later releases. */
function onlyChanges(changes: Partial<PullSettings>): Partial<PullSettings> {
  for (const [name, value] of Object.entries(changes)) checkOne(name, value);
  const defaults: Readonly<Record<string, unknown>> = { ...DEFAULT_PULL_SETTINGS };
  return Object.fromEntries(
    Object.entries(changes).filter(
      ([name, value]) => JSON.stringify(value) !== JSON.stringify(defaults[name]),
    ),
  );
}

function checkOne(name: string, value: unknown): void {
  try {
    completeSettings({ [name]: value });
  } catch (error) {
    if (!(error instanceof LogError)) throw error;
    const errors = [{ field: `changes.${name}`, message: error.hint }];
    throw new DomainError('invalid-request', `${error.message}; ${error.hint}`, { errors });
  }
}

import { PullSettings } from '@pullbook/contracts';
import type { WorkshopTransaction } from '@pullbook/database';
import { completeSettings, LogError } from '@pullbook/tuning-math';

/** Settings that the workshop's logs are analysed with, and their revision. */
export interface SettingsInForce {
  readonly settings: PullSettings;
  readonly revision: number;
}

/**
 * The workshop's settings for the log analysis: its changes over the default ones. A change that this release no
 * longer allows falls back to the default.
 */
export async function readLogSettings(db: WorkshopTransaction, workshopId: string): Promise<SettingsInForce> {
  const row = await db.workshop.findUniqueOrThrow({
    where: { id: workshopId },
    select: { logSettings: true, logSettingsRevision: true },
  });
  const changes = Object.entries(PullSettings.partial().parse(row.logSettings ?? {})).filter(isAllowed);
  const settings = PullSettings.parse(completeSettings(Object.fromEntries(changes)));
  return { settings, revision: row.logSettingsRevision };
}

function isAllowed([name, value]: readonly [string, unknown]): boolean {
  try {
    completeSettings({ [name]: value });
    return true;
  } catch (error) {
    if (error instanceof LogError) return false;
    throw error;
  }
}

import { PullSettings, type LogSettings } from '@pullbook/contracts';
import type { WorkshopTransaction } from '@pullbook/database';
import { DEFAULT_PULL_SETTINGS } from '@pullbook/tuning-math';
import { readLogSettings } from './read-log-settings.js';

/** The settings in force beside the default ones. */
export async function getLogSettings(db: WorkshopTransaction, workshopId: string): Promise<LogSettings> {
  const defaults = PullSettings.parse(DEFAULT_PULL_SETTINGS);
  return { ...(await readLogSettings(db, workshopId)), defaults };
}

import { SettingRange, type Controller } from '@pullbook/contracts';
import type * as rows from '@pullbook/database';

/** A controller as it goes out. */
export function presentController(row: rows.Controller): Controller {
  return {
    id: row.id,
    name: row.name,
    presetSlots: row.presetSlots,
    hasTimedOverride: row.hasTimedOverride,
    loop: row.loop as Controller['loop'],
    dutyPct: SettingRange.parse(row.dutyPct),
    holdPct: SettingRange.nullable().parse(row.holdPct),
    correction: SettingRange.nullable().parse(row.correction),
    note: row.note,
    revision: row.revision,
    createdAt: row.createdAt.toISOString(),
  };
}

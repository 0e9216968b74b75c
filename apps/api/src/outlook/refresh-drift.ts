import type { DriftAlarm } from '@pullbook/contracts';
import type { WorkshopTransaction } from '@pullbook/database';
import { readAdviceRules } from '../advice/read-advice-rules.js';
import type { Actor } from '../plumbing/actor.js';
import { recordEvent } from '../plumbing/record-event.js';
import type { PresetRecord } from '../presets/load-presets.js';
import { followHistory } from './follow-history.js';
import { loadHistory } from './load-history.js';
import { alarmOf } from './present-drift.js';

/**
 * Brings a preset's drift alarm into step with its pulls: raises one, keeps it current, or closes it. Called in the
 * transaction of every change that may move it: a pull recorded or voided, settings changed, a visit signed off, the
 * air of a session put right.
 *
 * @param preset as it is stored after the change; its pulls are read anew
 */
export async function refreshDrift(
  tx: WorkshopTransaction,
  actor: Actor,
  preset: PresetRecord,
): Promise<void> {
  const { id: presetId } = preset;
  const alarm = await findAlarm(tx, actor, preset);
  const open = await tx.driftAlarm.findFirst({
    where: { presetId, clearedAt: null },
    orderBy: { id: 'asc' },
  });
  if (alarm === null && open === null) return;
  if (alarm === null) {
    await tx.driftAlarm.updateMany({
      where: { presetId, clearedAt: null },
      data: { clearedAt: actor.now() },
    });
    await tell(tx, actor, preset, { action: 'drift-alarm-closed', said: 'drift alarm closed' });
    return;
  }
  if (open !== null) {
    await tx.driftAlarm.update({ where: { id: open.id }, data: alarm });
    return;
  }
  await tx.driftAlarm.create({ data: { presetId, ...alarm, raisedAt: actor.now() } });
  await tell(tx, actor, preset, { action: 'drift-alarm-raised', said: `drift alarm: ${alarm.text}` });
}

async function findAlarm(
  tx: WorkshopTransaction,
  { workshopId }: Actor,
  preset: PresetRecord,
): Promise<DriftAlarm | null> {
  if (preset.isReplaced || preset.values.dutyPct === null) return null;
  const rules = await readAdviceRules({ db: tx, workshopId });
  const followed = followHistory(await loadHistory(tx, preset, rules));
  return followed && alarmOf(followed);
}

async function tell(
  tx: WorkshopTransaction,
  actor: Actor,
  { id, values }: PresetRecord,
  { action, said }: { action: string; said: string },
): Promise<void> {
  const summary = `${values.name}: ${said}`;
  await recordEvent(tx, actor, { action, noun: 'preset', recordId: id, summary });
}

import { closedStages, type Preset, type PresetChange } from '@pullbook/contracts';
import type { WorkshopTransaction } from '@pullbook/database';
import { ceilingOfCar } from '../engine/ceiling-of-car.js';
import { refreshDrift } from '../outlook/refresh-drift.js';
import type { Actor } from '../plumbing/actor.js';
import { DomainError } from '../plumbing/domain-error.js';
import { changedMeanwhile } from '../plumbing/etags.js';
import { recordEvent } from '../plumbing/record-event.js';
import { checkMaySet } from './check-may-set.js';
import { checkPresetValues } from './check-preset-values.js';
import { loadPreset, type PresetRecord } from './load-presets.js';
import { getPreset } from './get-preset.js';
import type { PresetValues } from './preset-values.js';

/**
 * Writes a new revision of a preset; the older ones stay as they are.
 *
 * @param expectedRevision the revision that the change was made on
 * @throws DomainError not-found, changed-meanwhile, not-allowed for a tuning value from the front desk, conflict for a
 *   replaced preset or a slot in use, visit-closed for a sealed preset without an open visit, and the refusals of
 *   `checkPresetValues`
 */
export async function changePreset(
  actor: Actor,
  presetId: string,
  expectedRevision: number,
  change: PresetChange,
): Promise<Preset> {
  await actor.db.$transaction(async (tx) => {
    await holdPreset(tx, presetId);
    const record = await loadPreset(tx, presetId);
    const { reason = '', ...changed } = change;
    const values: PresetValues = { ...record.values, ...withoutUndefined(changed) };
    const fields = changedFields(record.values, values);
    checkMaySet(actor.role, fields);
    await checkChangeable(tx, record, fields);
    if (fields.includes('slot')) await checkSlotFree(tx, record, values.slot);
    checkPresetValues(values, record.car.controller, ceilingOfCar(record.car));
    await claimRevision(tx, record, expectedRevision, values.slot);
    await writeRevision(tx, actor, record, { values, fields, reason });
    await refreshDrift(tx, actor, await loadPreset(tx, presetId));
  });
  return getPreset(actor, presetId);
}

/** Makes a second change of the same preset wait, so that it sees what the first one wrote. */
async function holdPreset(tx: WorkshopTransaction, presetId: string): Promise<void> {
  await tx.preset.updateMany({ where: { id: presetId }, data: { revision: { increment: 0 } } });
}

function withoutUndefined(change: PresetChange): Partial<PresetValues> {
  return Object.fromEntries(Object.entries(change).filter(([, value]) => value !== undefined));
}

function changedFields(before: PresetValues, after: PresetValues): (keyof PresetValues)[] {
  return (Object.keys(after) as (keyof PresetValues)[]).filter((field) => before[field] !== after[field]);
}

async function checkChangeable(
  tx: WorkshopTransaction,
  record: PresetRecord,
  fields: readonly (keyof PresetValues)[],
): Promise<void> {
  if (record.isReplaced) throw new DomainError('conflict', 'a newer preset took the slot of this one');
  const isSealed = record.signedOffRevision === record.revision;
  if (!isSealed || fields.every((field) => field === 'name' || field === 'purpose')) return;
  const open = await tx.visit.count({
    where: { carId: record.car.id, signOff: null, stage: { notIn: [...closedStages] } },
  });
  if (open === 0) {
    throw new DomainError(
      'visit-closed',
      'this preset is signed off as it stands; open a new visit of the car before changing its settings',
    );
  }
}

async function checkSlotFree(
  tx: WorkshopTransaction,
  { car, id }: PresetRecord,
  slot: number,
): Promise<void> {
  const other = await tx.preset.findFirst({
    where: { carId: car.id, slot, replacedAt: null, NOT: { id } },
  });
  if (other === null) return;
  const message = `slot ${slot} holds another preset; replace that one or choose a free slot`;
  throw new DomainError('conflict', message, { errors: [{ field: 'slot', message }] });
}

/** The compare-and-set that lets only one of two changes made on the same revision through. */
async function claimRevision(
  tx: WorkshopTransaction,
  record: PresetRecord,
  expectedRevision: number,
  slot: number,
): Promise<void> {
  const claimed = await tx.preset.updateMany({
    where: { id: record.id, revision: expectedRevision },
    data: { revision: { increment: 1 }, slot },
  });
  if (claimed.count === 1) return;
  throw changedMeanwhile('preset');
}

async function writeRevision(
  tx: WorkshopTransaction,
  actor: Actor,
  record: PresetRecord,
  made: { values: PresetValues; fields: readonly (keyof PresetValues)[]; reason: string },
): Promise<void> {
  const { values, fields, reason } = made;
  await tx.presetRevision.create({
    data: {
      ...values,
      presetId: record.id,
      revision: record.revision + 1,
      reason,
      madeBy: actor.name,
      madeAt: actor.now(),
    },
  });
  await recordEvent(tx, actor, {
    action: 'preset-changed',
    noun: 'preset',
    recordId: record.id,
    summary: `changed ${fields.length === 0 ? 'nothing' : fields.join(', ')} of preset ${values.name}`,
    detail: {
      revision: record.revision + 1,
      reason,
      changed: Object.fromEntries(fields.map((field) => [field, values[field]])),
    },
  });
}

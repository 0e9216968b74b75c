import { PresetNew, type Preset } from '@pullbook/contracts';
import type { WorkshopTransaction } from '@pullbook/database';
import { ceilingOfCar } from '../engine/ceiling-of-car.js';
import type { Actor } from '../plumbing/actor.js';
import { DomainError } from '../plumbing/domain-error.js';
import { recordEvent } from '../plumbing/record-event.js';
import { checkMaySet } from './check-may-set.js';
import { checkPresetValues } from './check-preset-values.js';
import { loadPresetCar } from './load-presets.js';
import { getPreset } from './get-preset.js';

/**
 * Puts a preset into a slot of a car. One that stood in that slot is replaced: it stays readable, with its pulls.
 *
 * @throws DomainError not-found for a car of another workshop, not-allowed for a tuning value from the front desk,
 *   conflict where the desk would replace a preset, and the refusals of `checkPresetValues`
 */
export async function createPreset(actor: Actor, carId: string, input: PresetNew): Promise<Preset> {
  checkMaySet(actor.role, tuningValuesOf(input));
  const presetId = await actor.db.$transaction((tx) => addPreset(tx, actor, carId, input));
  return getPreset(actor, presetId);
}

/** The same inside a transaction that does more; whether the actor may set the values is the caller's to check. */
export async function addPreset(
  tx: WorkshopTransaction,
  actor: Actor,
  carId: string,
  input: PresetNew,
): Promise<string> {
  // Holds the car, so that two presets for one slot come one after the other; the order is the lock's on both databases.
  await tx.car.updateMany({ where: { id: carId }, data: { revision: { increment: 0 } } });
  const car = await loadPresetCar(tx, carId);
  checkPresetValues(input, car.controller, ceilingOfCar(car));
  const at = actor.now();
  await replaceInSlot(tx, actor, carId, input.slot);
  const preset = await tx.preset.create({ data: { carId, slot: input.slot, createdAt: at } });
  await tx.presetRevision.create({
    data: {
      ...input,
      presetId: preset.id,
      revision: 1,
      reason: 'first entry',
      madeBy: actor.name,
      madeAt: at,
    },
  });
  await recordEvent(tx, actor, {
    action: 'preset-created',
    noun: 'preset',
    recordId: preset.id,
    summary: `entered preset ${input.name} in slot ${input.slot}`,
    detail: { carId, ...input },
  });
  return preset.id;
}

async function replaceInSlot(
  tx: WorkshopTransaction,
  actor: Actor,
  carId: string,
  slot: number,
): Promise<void> {
  const standing = await tx.preset.findMany({ where: { carId, slot, replacedAt: null } });
  if (standing.length > 0 && actor.role === 'desk') {
    const message = `slot ${slot} holds a preset; a tuner decides whether it is replaced`;
    throw new DomainError('conflict', message, { errors: [{ field: 'slot', message }] });
  }
  for (const { id } of standing) {
    await tx.preset.update({ where: { id }, data: { replacedAt: actor.now() } });
    await recordEvent(tx, actor, {
      action: 'preset-replaced',
      noun: 'preset',
      recordId: id,
      summary: `a newer preset took slot ${slot}`,
      detail: { carId, slot },
    });
  }
}

/** Tuning values that a new preset brings; name, purpose and target are the customer's wish and no setting. */
function tuningValuesOf(input: PresetNew): string[] {
  const wish = PresetNew.parse({ name: input.name, slot: input.slot });
  const settings = [
    'kind',
    'holdSeconds',
    'toleranceKpa',
    'ceilingKpa',
    'dutyPct',
    'gateHoldPct',
    'correctionStrength',
  ] as const;
  return settings.filter((field) => input[field] !== wish[field]);
}

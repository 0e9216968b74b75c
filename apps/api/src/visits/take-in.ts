import { PresetNew, type Intake, type IntakeNew } from '@pullbook/contracts';
import type { WorkshopTransaction } from '@pullbook/database';
import { addCar } from '../cars/create-car.js';
import { getCar } from '../cars/get-car.js';
import { addCustomer } from '../customers/create-customer.js';
import { getCustomer } from '../customers/get-customer.js';
import type { Actor } from '../plumbing/actor.js';
import { DomainError } from '../plumbing/domain-error.js';
import { addPreset } from '../presets/create-preset.js';
import { addVisit } from './create-visit.js';

/**
 * A whole intake: customer and car, on record or new, a visit and the presets wanted. All of it or nothing.
 * @throws DomainError not-found for what is said to be on record, conflict where the car is another customer's or has
 *   no slot left, not-allowed for fields of the car that are not the desk's
 */
export function takeIn(actor: Actor, input: IntakeNew): Promise<Intake> {
  return actor.db.$transaction(async (tx) => {
    const customerId = await customerOf(tx, actor, input);
    const carId = await carOf(tx, actor, customerId, input);
    const visit = await addVisit(tx, actor, { ...input.visit, carId });
    const presetIds = await addWanted(tx, actor, carId, input.wantedPresets);
    return { customerId, carId, visitId: visit.id, presetIds };
  });
}

async function customerOf(tx: WorkshopTransaction, actor: Actor, input: IntakeNew): Promise<string> {
  if (!('id' in input.customer)) return (await addCustomer(tx, actor, input.customer)).id;
  return (await getCustomer(tx, input.customer.id)).id;
}

async function carOf(
  tx: WorkshopTransaction,
  actor: Actor,
  customerId: string,
  input: IntakeNew,
): Promise<string> {
  if (!('id' in input.car)) return (await addCar(tx, actor, { ...input.car, customerId })).id;
  const car = await getCar(tx, input.car.id);
  if (car.customerId === customerId) return car.id;
  const errors = [{ field: 'car.id', message: `belongs to ${car.customerName}` }];
  throw new DomainError('conflict', `${car.plate} is on record as ${car.customerName}'s car`, { errors });
}

/** Wanted presets go into free slots, lowest first: at the desk nobody replaces what a tuner has set. */
async function addWanted(
  tx: WorkshopTransaction,
  actor: Actor,
  carId: string,
  wanted: IntakeNew['wantedPresets'],
): Promise<string[]> {
  const free = await freeSlots(tx, carId, wanted.length);
  const presetIds: string[] = [];
  for (const [index, preset] of wanted.entries()) {
    const slot = free[index];
    if (slot === undefined) {
      const errors = [{ field: `wantedPresets.${index}`, message: 'finds no free slot in the controller' }];
      throw new DomainError('conflict', `the controller has no free slot for ${preset.name}`, { errors });
    }
    presetIds.push(await addPreset(tx, actor, carId, PresetNew.parse({ ...preset, slot })));
  }
  return presetIds;
}

const slotsWithoutController = 20;

async function freeSlots(tx: WorkshopTransaction, carId: string, count: number): Promise<number[]> {
  const car = await tx.car.findUniqueOrThrow({
    where: { id: carId },
    include: { controller: true, presets: { where: { replacedAt: null }, select: { slot: true } } },
  });
  const taken = new Set(car.presets.map((preset) => preset.slot));
  const slotCount = car.controller?.presetSlots ?? slotsWithoutController;
  const slots = Array.from({ length: slotCount }, (_, index) => index + 1);
  return slots.filter((slot) => !taken.has(slot)).slice(0, count);
}

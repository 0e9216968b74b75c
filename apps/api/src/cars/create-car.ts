import type { Car, CarNew } from '@pullbook/contracts';
import type { WorkshopTransaction } from '@pullbook/database';
import type { Actor } from '../plumbing/actor.js';
import { recordEvent } from '../plumbing/record-event.js';
import { checkCarFields } from './check-car-fields.js';
import { checkCarParts } from './check-car-parts.js';
import { carKeys } from './car-keys.js';
import { getCar } from './get-car.js';

/**
 * Takes a car into the book.
 * @throws DomainError not-found for customer or controller, not-allowed for fields that are not the desk's
 */
export function createCar(actor: Actor, input: CarNew): Promise<Car> {
  return actor.db.$transaction((tx) => addCar(tx, actor, input));
}

/** The same inside a transaction that does more. */
export async function addCar(tx: WorkshopTransaction, actor: Actor, input: CarNew): Promise<Car> {
  checkCarFields(actor, input);
  await checkCarParts(tx, input);
  const { id } = await tx.car.create({ data: { ...input, ...carKeys(input), createdAt: actor.now() } });
  await recordEvent(tx, actor, {
    action: 'car-created',
    noun: 'car',
    recordId: id,
    summary: `took in the car ${input.plate}`,
    detail: input,
  });
  return getCar(tx, id);
}

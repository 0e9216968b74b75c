import type { Customer, CustomerNew } from '@pullbook/contracts';
import type { WorkshopTransaction } from '@pullbook/database';
import type { Actor } from '../plumbing/actor.js';
import { recordEvent } from '../plumbing/record-event.js';
import { searchText } from '../plumbing/search-text.js';
import { getCustomer } from './get-customer.js';

/** Takes a customer into the book. */
export function createCustomer(actor: Actor, input: CustomerNew): Promise<Customer> {
  return actor.db.$transaction((tx) => addCustomer(tx, actor, input));
}

/** The same inside a transaction that does more. */
export async function addCustomer(
  tx: WorkshopTransaction,
  actor: Actor,
  input: CustomerNew,
): Promise<Customer> {
  const text = searchText(input.name, input.phone, input.email);
  const { id } = await tx.customer.create({ data: { ...input, searchText: text, createdAt: actor.now() } });
  await recordEvent(tx, actor, {
    action: 'customer-created',
    noun: 'customer',
    recordId: id,
    summary: `took in the customer ${input.name}`,
    detail: input,
  });
  return getCustomer(tx, id);
}

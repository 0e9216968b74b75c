import type { Customer, CustomerChange } from '@pullbook/contracts';
import type { z } from 'zod';
import type { Actor } from '../plumbing/actor.js';
import { changedMeanwhile } from '../plumbing/etags.js';
import { recordEvent } from '../plumbing/record-event.js';
import { searchText } from '../plumbing/search-text.js';
import { withoutGaps } from '../plumbing/without-gaps.js';
import { getCustomer } from './get-customer.js';

/**
 * Changes what is known of a customer.
 * @param revision the one that the sender has seen
 * @throws DomainError not-found, changed-meanwhile
 */
export async function changeCustomer(
  actor: Actor,
  id: string,
  revision: number,
  change: z.infer<typeof CustomerChange>,
): Promise<Customer> {
  return actor.db.$transaction(async (tx) => {
    const given = withoutGaps(change);
    const { name, phone, email } = { ...(await getCustomer(tx, id)), ...given };
    const { count } = await tx.customer.updateMany({
      where: { id, revision },
      data: { ...given, searchText: searchText(name, phone, email), revision: { increment: 1 } },
    });
    if (count === 0) throw changedMeanwhile('customer');
    await recordEvent(tx, actor, {
      action: 'customer-changed',
      noun: 'customer',
      recordId: id,
      summary: `changed the customer ${name}`,
      detail: given,
    });
    return getCustomer(tx, id);
  });
}

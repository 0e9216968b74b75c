import type { Customer } from '@pullbook/contracts';
import type { WorkshopTransaction } from '@pullbook/database';
import { DomainError } from '../plumbing/domain-error.js';
import { customerParts, presentCustomer } from './present-customer.js';

/**
 * One customer.
 * @throws DomainError not-found
 */
export async function getCustomer(db: WorkshopTransaction, id: string): Promise<Customer> {
  const row = await db.customer.findUnique({ where: { id }, include: customerParts });
  if (!row) throw new DomainError('not-found', 'there is no customer of this id');
  return presentCustomer(row);
}

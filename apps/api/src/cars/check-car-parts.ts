import type { WorkshopTransaction } from '@pullbook/database';
import { DomainError } from '../plumbing/domain-error.js';

interface CarLinks {
  readonly customerId?: string | undefined;
  readonly controllerId?: string | null | undefined;
}

/**
 * Whether customer and controller that a car is to have are this workshop's.
 * @throws DomainError not-found, naming the field
 */
export async function checkCarParts(tx: WorkshopTransaction, links: CarLinks): Promise<void> {
  const { customerId, controllerId } = links;
  if (customerId !== undefined && !(await tx.customer.findUnique({ where: { id: customerId } }))) {
    throw unknown('customerId', 'customer');
  }
  if (
    typeof controllerId === 'string' &&
    !(await tx.controller.findUnique({ where: { id: controllerId } }))
  ) {
    throw unknown('controllerId', 'controller');
  }
}

function unknown(field: string, noun: string): DomainError {
  const errors = [{ field, message: `is no ${noun} of this workshop` }];
  return new DomainError('not-found', `there is no ${noun} of this id`, { errors });
}

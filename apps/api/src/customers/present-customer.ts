import type { Customer } from '@pullbook/contracts';
import type * as rows from '@pullbook/database';

/** What must be read with a customer. */
export const customerParts = { _count: { select: { cars: true } } } as const;

/** A customer as it goes out. */
export function presentCustomer(row: rows.Customer & { _count: { cars: number } }): Customer {
  return {
    id: row.id,
    name: row.name,
    phone: row.phone,
    email: row.email,
    note: row.note,
    carCount: row._count.cars,
    revision: row.revision,
    createdAt: row.createdAt.toISOString(),
  };
}

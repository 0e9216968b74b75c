import type { Customer, CustomerQuery } from '@pullbook/contracts';
import type { z } from 'zod';
import type { Actor } from '../plumbing/actor.js';
import { pageArguments, toPage } from '../plumbing/paging.js';
import { searchWords } from '../plumbing/search-text.js';
import { customerParts, presentCustomer } from './present-customer.js';

/** Customers by name; `q` looks in name, telephone and mail address. */
export async function findCustomers(
  actor: Actor,
  query: z.infer<typeof CustomerQuery>,
): Promise<{ items: Customer[]; nextCursor: string | null }> {
  const words = searchWords(query.q);
  const rows = await actor.db.customer.findMany({
    ...pageArguments(query),
    where: { AND: words.map((word) => ({ searchText: { contains: word } })) },
    orderBy: [{ name: 'asc' }, { id: 'asc' }],
    include: customerParts,
  });
  return toPage(rows, query, presentCustomer);
}

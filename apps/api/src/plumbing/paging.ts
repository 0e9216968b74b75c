import { Id } from '@pullbook/contracts';
import { DomainError } from './domain-error.js';

export interface PageRequest {
  readonly limit: number;
  readonly cursor?: string | undefined;
}

interface PageArguments {
  take: number;
  cursor?: { id: string };
  skip?: number;
}

/**
 * What a query for one page must say; one row more than wanted tells whether there is a next page.
 * The query must have an order with the id as last tie-break.
 * @throws DomainError invalid-request for a cursor that no list gave out
 */
export function pageArguments({ limit, cursor }: PageRequest): PageArguments {
  if (cursor === undefined) return { take: limit + 1 };
  const id = Buffer.from(cursor, 'base64url').toString('utf8');
  if (!Id.safeParse(id).success) {
    const errors = [{ field: 'cursor', message: 'must be the nextCursor of the page before' }];
    throw new DomainError('invalid-request', 'cursor must be the nextCursor of the page before', { errors });
  }
  return { take: limit + 1, cursor: { id }, skip: 1 };
}

/** A page as it goes out, from rows that `pageArguments` asked for. */
export function toPage<Row extends { id: string }, Item>(
  rows: readonly Row[],
  { limit }: PageRequest,
  toItem: (row: Row) => Item,
): { items: Item[]; nextCursor: string | null } {
  const shown = rows.slice(0, limit);
  const last = shown.at(-1);
  const hasMore = rows.length > limit && last !== undefined;
  return {
    items: shown.map(toItem),
    nextCursor: hasMore ? Buffer.from(last.id, 'utf8').toString('base64url') : null,
  };
}

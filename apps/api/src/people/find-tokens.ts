import type { Token } from '@pullbook/contracts';
import type { z } from 'zod';
import type { Actor } from '../plumbing/actor.js';
import { pageArguments, toPage, type PageRequest } from '../plumbing/paging.js';
import { presentToken } from './present-people.js';

/** The actor's own tokens, newest first; ended ones too. */
export async function findTokens(
  actor: Actor,
  query: PageRequest,
): Promise<{ items: z.infer<typeof Token>[]; nextCursor: string | null }> {
  const where = { memberId: actor.memberId };
  const rows = await actor.db.apiToken.findMany({ ...pageArguments(query), where, orderBy: { id: 'desc' } });
  return toPage(rows, query, presentToken);
}

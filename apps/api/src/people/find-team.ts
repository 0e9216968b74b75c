import type { Member } from '@pullbook/contracts';
import type { Actor } from '../plumbing/actor.js';
import { pageArguments, toPage, type PageRequest } from '../plumbing/paging.js';
import { presentMember } from './present-people.js';

/** Everybody of the workshop, by name; those who left are marked as not active. */
export async function findTeam(
  actor: Actor,
  query: PageRequest,
): Promise<{ items: Member[]; nextCursor: string | null }> {
  const orderBy = [{ name: 'asc' as const }, { id: 'asc' as const }];
  const rows = await actor.db.member.findMany({ ...pageArguments(query), orderBy });
  return toPage(rows, query, presentMember);
}

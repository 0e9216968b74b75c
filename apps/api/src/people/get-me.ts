import type { Me } from '@pullbook/contracts';
import type { Actor } from '../plumbing/actor.js';
import { presentMe } from './present-people.js';

/** Who the actor is, at which workshop. */
export async function getMe(actor: Actor): Promise<Me> {
  const where = { id: actor.memberId };
  return presentMe(await actor.db.member.findUniqueOrThrow({ where, include: { workshop: true } }));
}

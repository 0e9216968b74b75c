import type { Token } from '@pullbook/contracts';
import type { z } from 'zod';
import type { Actor } from '../plumbing/actor.js';
import { DomainError } from '../plumbing/domain-error.js';
import { recordEvent } from '../plumbing/record-event.js';
import { presentToken } from './present-people.js';

/**
 * Ends a token of the actor; one that has ended stays on record.
 * @throws DomainError not-found
 */
export async function revokeToken(actor: Actor, id: string): Promise<z.infer<typeof Token>> {
  return actor.db.$transaction(async (tx) => {
    const before = await tx.apiToken.findUnique({ where: { id, memberId: actor.memberId } });
    if (!before) throw new DomainError('not-found', 'you have no token of this id');
    if (before.revokedAt) return presentToken(before);
    const row = await tx.apiToken.update({ where: { id }, data: { revokedAt: actor.now() } });
    await recordEvent(tx, actor, {
      action: 'token-revoked',
      noun: 'token',
      recordId: id,
      summary: `ended the token ${row.name}`,
    });
    return presentToken(row);
  });
}

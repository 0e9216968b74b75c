import type { Token, TokenMade, TokenNew } from '@pullbook/contracts';
import type { z } from 'zod';
import type { Actor } from '../plumbing/actor.js';
import { DomainError } from '../plumbing/domain-error.js';
import { recordEvent } from '../plumbing/record-event.js';
import { hashSecret, newSecret } from '../plumbing/secrets.js';
import { presentToken } from './present-people.js';

/** The actor's own tokens, newest first. */
export async function findTokens(actor: Actor): Promise<z.infer<typeof Token>[]> {
  const rows = await actor.db.apiToken.findMany({
    where: { memberId: actor.memberId },
    orderBy: { id: 'desc' },
    take: 200,
  });
  return rows.map(presentToken);
}

/** Makes a token by which a program may act as the actor; its secret is told once, here. */
export async function createToken(
  actor: Actor,
  input: z.infer<typeof TokenNew>,
): Promise<z.infer<typeof TokenMade>> {
  const secret = newSecret();
  return actor.db.$transaction(async (tx) => {
    const data = { memberId: actor.memberId, name: input.name, secretHash: hashSecret(secret) };
    const row = await tx.apiToken.create({ data: { ...data, createdAt: actor.now() } });
    await recordEvent(tx, actor, {
      action: 'token-created',
      noun: 'token',
      recordId: row.id,
      summary: `made the token ${row.name}`,
    });
    return { ...presentToken(row), secret };
  });
}

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

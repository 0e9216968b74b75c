import type { TokenMade, TokenNew } from '@pullbook/contracts';
import type { z } from 'zod';
import type { Actor } from '../plumbing/actor.js';
import { recordEvent } from '../plumbing/record-event.js';
import { hashSecret, newSecret } from '../plumbing/secrets.js';
import { presentToken } from './present-people.js';

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

import type { Member, MemberNew } from '@pullbook/contracts';
import { isUniqueConflict } from '@pullbook/database';
import type { z } from 'zod';
import type { Actor } from '../plumbing/actor.js';
import { DomainError } from '../plumbing/domain-error.js';
import { hashPassword } from '../plumbing/passwords.js';
import { recordEvent } from '../plumbing/record-event.js';
import { presentMember } from './present-people.js';

/**
 * Takes somebody into the team.
 * @throws DomainError conflict where the mail address is taken
 */
export async function createMember(actor: Actor, input: z.infer<typeof MemberNew>): Promise<Member> {
  const { password, ...rest } = input;
  const passwordHash = await hashPassword(password);
  const email = rest.email.toLowerCase();
  try {
    return await actor.db.$transaction(async (tx) => {
      const data = { ...rest, email, passwordHash, tourStep: 0, createdAt: actor.now() };
      const row = await tx.member.create({ data });
      await recordEvent(tx, actor, {
        action: 'member-created',
        noun: 'member',
        recordId: row.id,
        summary: `took ${row.name} into the team as ${row.role}`,
        detail: { name: row.name, email, role: row.role },
      });
      return presentMember(row);
    });
  } catch (error) {
    if (!isUniqueConflict(error)) throw error;
    const errors = [{ field: 'email', message: 'is taken' }];
    throw new DomainError('conflict', 'somebody has this mail address already', { errors, cause: error });
  }
}

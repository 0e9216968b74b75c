import type { Member, MemberChange } from '@pullbook/contracts';
import type { WorkshopTransaction } from '@pullbook/database';
import type { z } from 'zod';
import type { Actor } from '../plumbing/actor.js';
import { DomainError } from '../plumbing/domain-error.js';
import { changedMeanwhile } from '../plumbing/etags.js';
import { recordEvent } from '../plumbing/record-event.js';
import { withoutGaps } from '../plumbing/without-gaps.js';
import { presentMember } from './present-people.js';

/**
 * Changes name or role, or lets somebody go; who goes is signed out everywhere at once.
 * @throws DomainError not-found, changed-meanwhile, and conflict where no owner would be left
 */
export async function changeMember(
  actor: Actor,
  id: string,
  revision: number,
  change: z.infer<typeof MemberChange>,
): Promise<Member> {
  return actor.db.$transaction(async (tx) => {
    const before = await tx.member.findUnique({ where: { id } });
    if (!before) throw new DomainError('not-found', 'there is nobody of this id in the team');
    const data = { ...change, revision: { increment: 1 } };
    const { count } = await tx.member.updateMany({ where: { id, revision }, data: withoutGaps(data) });
    if (count === 0) throw changedMeanwhile('member');
    await refuseWithoutOwner(tx);
    if (change.active === false) await endSignIns(tx, actor, id);
    const row = await tx.member.findUniqueOrThrow({ where: { id } });
    await recordEvent(tx, actor, {
      action: 'member-changed',
      noun: 'member',
      recordId: id,
      summary: `changed ${row.name} in the team`,
      detail: change,
    });
    return presentMember(row);
  });
}

async function refuseWithoutOwner(tx: WorkshopTransaction): Promise<void> {
  if ((await tx.member.count({ where: { role: 'owner', active: true } })) > 0) return;
  throw new DomainError('conflict', 'a workshop needs an owner: name another one first');
}

async function endSignIns(tx: WorkshopTransaction, actor: Actor, memberId: string): Promise<void> {
  await tx.signIn.deleteMany({ where: { memberId } });
  await tx.apiToken.updateMany({ where: { memberId, revokedAt: null }, data: { revokedAt: actor.now() } });
}

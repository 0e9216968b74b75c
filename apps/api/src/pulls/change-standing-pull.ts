import type { Pull, WorkshopTransaction } from '@pullbook/database';
import type { Actor } from '../plumbing/actor.js';
import { DomainError } from '../plumbing/domain-error.js';
import { holdOpenVisit } from '../tuning-sessions/hold-open-visit.js';
import { presentPull } from './present-pull.js';
import type { RecordedPull } from './record-pull.js';

/**
 * Changes what is said of a pull that is not void, while its visit is held open.
 *
 * @param change gives the pull as it is afterwards
 * @throws DomainError not-found, visit-closed, void-already with who voided it and why
 */
export async function changeStandingPull(
  actor: Actor,
  pullId: string,
  change: (tx: WorkshopTransaction, pull: Pull) => Promise<Pull>,
): Promise<RecordedPull> {
  const found = await actor.db.pull.findFirst({ where: { id: pullId }, select: { visitId: true } });
  if (found === null) throw new DomainError('not-found', 'this workshop has no such pull');
  const pull = await actor.db.$transaction(async (tx) => {
    await holdOpenVisit(tx, found.visitId);
    const before = await tx.pull.findFirstOrThrow({ where: { id: pullId } });
    if (before.voidedAt !== null) throw voidAlready(before);
    return presentPull(await change(tx, before));
  });
  return { pull, visitId: found.visitId };
}

function voidAlready({ number, voidedBy, voidReason }: Pull): DomainError {
  const by = voidedBy === null ? '' : ` by ${voidedBy}`;
  return new DomainError('void-already', `pull ${number} was voided before${by}: ${voidReason ?? ''}`);
}

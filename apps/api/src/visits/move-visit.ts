import { Stage, type StageChange, type Visit } from '@pullbook/contracts';
import type { z } from 'zod';
import type { Actor } from '../plumbing/actor.js';
import { changedMeanwhile } from '../plumbing/etags.js';
import { enterStage } from '../tuning-sessions/enter-stage.js';
import { holdVisit } from '../tuning-sessions/hold-open-visit.js';
import { checkStageMove } from './check-stage-move.js';
import { getVisit } from './get-visit.js';

/**
 * Moves a visit to another stage; every stage that it was in stays on record.
 * @param revision the one that the sender has seen
 * @throws DomainError not-found, changed-meanwhile, and the refusals of `checkStageMove`
 */
export function moveVisit(
  actor: Actor,
  id: string,
  revision: number,
  change: z.infer<typeof StageChange>,
): Promise<Visit> {
  return actor.db.$transaction(async (tx) => {
    const held = await holdVisit(tx, id);
    const before = await getVisit(tx, id);
    if (before.revision !== revision) throw changedMeanwhile('visit');
    const pullCount = await tx.pull.count({ where: { visitId: id, voidedAt: null } });
    const from = Stage.parse(held.stage);
    checkStageMove({ from, to: change.stage, role: actor.role, isSealed: held.isSealed, pullCount });
    await enterStage(tx, actor, held, change);
    return getVisit(tx, id);
  });
}

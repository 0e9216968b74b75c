import type { Controller, ControllerChange } from '@pullbook/contracts';
import type { z } from 'zod';
import type { Actor } from '../plumbing/actor.js';
import { changedMeanwhile } from '../plumbing/etags.js';
import { recordEvent } from '../plumbing/record-event.js';
import { withoutGaps } from '../plumbing/without-gaps.js';
import { rangeColumns } from './controller-columns.js';
import { getController } from './get-controller.js';

/**
 * Changes the description of a controller; presets already set with it stay as they are.
 * @param revision the one that the sender has seen
 * @throws DomainError not-found, changed-meanwhile
 */
export function changeController(
  actor: Actor,
  id: string,
  revision: number,
  change: z.infer<typeof ControllerChange>,
): Promise<Controller> {
  return actor.db.$transaction(async (tx) => {
    const { name } = await getController(tx, id);
    const { holdPct, correction, ...rest } = change;
    const columns = rangeColumns({ holdPct, correction });
    const { count } = await tx.controller.updateMany({
      where: { id, revision },
      data: { ...withoutGaps(rest), ...columns, revision: { increment: 1 } },
    });
    if (count === 0) throw changedMeanwhile('controller');
    await recordEvent(tx, actor, {
      action: 'controller-changed',
      noun: 'controller',
      recordId: id,
      summary: `changed the controller ${change.name ?? name}`,
      detail: change,
    });
    return getController(tx, id);
  });
}

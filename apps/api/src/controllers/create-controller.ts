import type { Controller, ControllerNew } from '@pullbook/contracts';
import type { Actor } from '../plumbing/actor.js';
import { recordEvent } from '../plumbing/record-event.js';
import { rangeColumns } from './controller-columns.js';
import { presentController } from './present-controller.js';

/** Describes a kind of controller. */
export function createController(actor: Actor, input: ControllerNew): Promise<Controller> {
  return actor.db.$transaction(async (tx) => {
    const { holdPct, correction, ...rest } = input;
    const data = { ...rest, ...rangeColumns({ holdPct, correction }), createdAt: actor.now() };
    const row = await tx.controller.create({ data });
    await recordEvent(tx, actor, {
      action: 'controller-created',
      noun: 'controller',
      recordId: row.id,
      summary: `described the controller ${row.name}`,
      detail: input,
    });
    return presentController(row);
  });
}

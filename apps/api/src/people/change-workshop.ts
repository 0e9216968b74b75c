import type { Workshop, WorkshopChange } from '@pullbook/contracts';
import type { z } from 'zod';
import type { Actor } from '../plumbing/actor.js';
import { changedMeanwhile } from '../plumbing/etags.js';
import { recordEvent } from '../plumbing/record-event.js';
import { withoutGaps } from '../plumbing/without-gaps.js';
import { presentWorkshop } from './present-people.js';

/**
 * Changes the workshop's name, paper units, paper header and rules for advice.
 * @throws DomainError changed-meanwhile
 */
export async function changeWorkshop(
  actor: Actor,
  revision: number,
  change: z.infer<typeof WorkshopChange>,
): Promise<Workshop> {
  const { units, ...rest } = change;
  const unitColumns = units ? { pressureUnit: units.pressure, temperatureUnit: units.temperature } : {};
  return actor.db.$transaction(async (tx) => {
    const { count } = await tx.workshop.updateMany({
      where: { id: actor.workshopId, revision },
      data: { ...withoutGaps(rest), ...unitColumns, revision: { increment: 1 } },
    });
    if (count === 0) throw changedMeanwhile('workshop');
    await recordEvent(tx, actor, {
      action: 'workshop-changed',
      noun: 'workshop',
      recordId: actor.workshopId,
      summary: sayChange(change),
      detail: change,
    });
    return presentWorkshop(await tx.workshop.findUniqueOrThrow({ where: { id: actor.workshopId } }));
  });
}

function sayChange(change: z.infer<typeof WorkshopChange>): string {
  const isHeaderAlone = Object.keys(withoutGaps(change)).join() === 'paperHeader';
  return isHeaderAlone ? 'changed the paper header' : 'changed the rules of the workshop';
}

import type { Me, MeChange } from '@pullbook/contracts';
import type { Actor } from '../plumbing/actor.js';
import { getMe } from './get-me.js';

/**
 * Sets the units that the actor reads figures in, and where their first tour is; matters of taste, so no history is
 * kept. 0 starts the tour and null ends it; a later step is taken only forwards and while the tour is on, so that one
 * which arrives late starts nothing anew.
 */
export async function changeMe(actor: Actor, { units, tourStep }: MeChange): Promise<Me> {
  const { db, memberId: id } = actor;
  if (units !== undefined) {
    const data = { pressureUnit: units.pressure, temperatureUnit: units.temperature };
    await db.member.update({ where: { id }, data });
  }
  if (tourStep !== undefined) {
    const isOneOfMany = tourStep !== null && tourStep > 0;
    const where = { id, ...(isOneOfMany ? { tourStep: { lt: tourStep } } : {}) };
    await db.member.updateMany({ where, data: { tourStep } });
  }
  return getMe(actor);
}

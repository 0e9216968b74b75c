import type { Me, MeChange } from '@pullbook/contracts';
import type { Actor } from '../plumbing/actor.js';
import { getMe } from './get-me.js';

/** Sets the units that the actor reads figures in, and where their first tour is; matters of taste, so no history is kept. */
export async function changeMe(actor: Actor, { units, tourStep }: MeChange): Promise<Me> {
  const data = {
    ...(units === undefined ? {} : { pressureUnit: units.pressure, temperatureUnit: units.temperature }),
    ...(tourStep === undefined ? {} : { tourStep }),
  };
  await actor.db.member.update({ where: { id: actor.memberId }, data });
  return getMe(actor);
}

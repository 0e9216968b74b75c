import type { Me, Units } from '@pullbook/contracts';
import type { Actor } from '../plumbing/actor.js';
import { getMe } from './get-me.js';

/** Sets the units that the actor reads figures in; a matter of taste, so no history is kept. */
export async function changeMyUnits(actor: Actor, units: Units): Promise<Me> {
  const data = { pressureUnit: units.pressure, temperatureUnit: units.temperature };
  await actor.db.member.update({ where: { id: actor.memberId }, data });
  return getMe(actor);
}

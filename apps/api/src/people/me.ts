import type { Me, Units } from '@pullbook/contracts';
import type { Actor } from '../plumbing/actor.js';
import { presentMe } from './present-people.js';

/** Who the actor is, at which workshop. */
export async function getMe(actor: Actor): Promise<Me> {
  const where = { id: actor.memberId };
  return presentMe(await actor.db.member.findUniqueOrThrow({ where, include: { workshop: true } }));
}

/** Sets the units that the actor reads figures in; a matter of taste, so no history is kept. */
export async function changeMyUnits(actor: Actor, units: Units): Promise<Me> {
  const data = { pressureUnit: units.pressure, temperatureUnit: units.temperature };
  await actor.db.member.update({ where: { id: actor.memberId }, data });
  return getMe(actor);
}

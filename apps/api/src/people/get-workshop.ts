import type { Workshop } from '@pullbook/contracts';
import type { Actor } from '../plumbing/actor.js';
import { presentWorkshop } from './present-people.js';

/** The actor's workshop and its rules. */
export async function getWorkshop(actor: Actor): Promise<Workshop> {
  return presentWorkshop(await actor.db.workshop.findUniqueOrThrow({ where: { id: actor.workshopId } }));
}

import type { Actor } from '../plumbing/actor.js';
import type { AdviceRules } from '@pullbook/next-pull';

/** The workshop's own rules for every advice, as the owner set them. */
export async function readAdviceRules({
  db,
  workshopId,
}: Pick<Actor, 'db' | 'workshopId'>): Promise<AdviceRules> {
  const { stepLimit, riskLimit, requiredPulls } = await db.workshop.findUniqueOrThrow({
    where: { id: workshopId },
  });
  return { stepLimit, riskLimit, requiredPulls };
}

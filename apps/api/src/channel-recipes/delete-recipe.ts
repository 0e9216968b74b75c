import type { Actor } from '../plumbing/actor.js';
import { changedMeanwhile } from '../plumbing/etags.js';
import { recordEvent } from '../plumbing/record-event.js';
import { getRecipe } from './get-recipe.js';

/**
 * Forgets a channel recipe: logs of its shape are recognised again. How logs on record were read stays with them, and
 * the recipe itself in the records.
 *
 * @param revision the one that the sender has seen
 * @throws DomainError not-found, changed-meanwhile
 */
export function deleteRecipe(actor: Actor, id: string, revision: number): Promise<void> {
  return actor.db.$transaction(async (tx) => {
    const recipe = await getRecipe(tx, id);
    const { count } = await tx.channelRecipe.deleteMany({ where: { id, revision } });
    if (count === 0) throw changedMeanwhile('channel recipe');
    await recordEvent(tx, actor, {
      action: 'channel-recipe-deleted',
      noun: 'channel-recipe',
      recordId: id,
      summary: `forgot the channel recipe ${recipe.name}`,
      detail: recipe,
    });
  });
}

import type { ChannelRecipe, ChannelRecipeChange } from '@pullbook/contracts';
import type { Actor } from '../plumbing/actor.js';
import { changedMeanwhile } from '../plumbing/etags.js';
import { recordEvent } from '../plumbing/record-event.js';
import { withoutGaps } from '../plumbing/without-gaps.js';
import { checkReading } from './check-reading.js';
import { getRecipe } from './get-recipe.js';

/**
 * Changes a channel recipe; logs that were read by it stay as they were read.
 * @param revision the one that the sender has seen
 * @throws DomainError not-found, changed-meanwhile, invalid-request for a unit that cannot be
 */
export function changeRecipe(
  actor: Actor,
  id: string,
  revision: number,
  change: ChannelRecipeChange,
): Promise<ChannelRecipe> {
  if (change.reading) checkReading(change.reading, 'reading');
  return actor.db.$transaction(async (tx) => {
    const { name } = await getRecipe(tx, id);
    const { count } = await tx.channelRecipe.updateMany({
      where: { id, revision },
      data: { ...withoutGaps(change), revision: { increment: 1 } },
    });
    if (count === 0) throw changedMeanwhile('channel recipe');
    await recordEvent(tx, actor, {
      action: 'channel-recipe-changed',
      noun: 'channel-recipe',
      recordId: id,
      summary: `changed the channel recipe ${change.name ?? name}`,
      detail: change,
    });
    return getRecipe(tx, id);
  });
}

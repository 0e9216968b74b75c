import type { ChannelRecipe, ChannelRecipeNew } from '@pullbook/contracts';
import type { Actor } from '../plumbing/actor.js';
import { DomainError } from '../plumbing/domain-error.js';
import { recordEvent } from '../plumbing/record-event.js';
import { checkReading } from './check-reading.js';
import { presentRecipe } from './present-recipe.js';
import { shapeHash } from './shape-hash.js';

/**
 * Keeps how the logs of one shape are read; the next log of this shape is read so by itself.
 *
 * @throws DomainError conflict where there is a recipe for this shape, invalid-request for a unit that cannot be
 */
export function createRecipe(actor: Actor, input: ChannelRecipeNew): Promise<ChannelRecipe> {
  checkReading(input.reading, 'reading');
  const hash = shapeHash(input.shape);
  return actor.db.$transaction(async (tx) => {
    const known = await tx.channelRecipe.findFirst({ where: { shapeHash: hash } });
    if (known) {
      const message = `logs with these columns are read by the recipe "${known.name}" already; change that one`;
      throw new DomainError('conflict', message, { errors: [{ field: 'shape', message }] });
    }
    const row = await tx.channelRecipe.create({
      data: { ...input, shapeHash: hash, createdAt: actor.now() },
    });
    await recordEvent(tx, actor, {
      action: 'channel-recipe-created',
      noun: 'channel-recipe',
      recordId: row.id,
      summary: `kept the channel recipe ${row.name}`,
      detail: input,
    });
    return presentRecipe(row);
  });
}

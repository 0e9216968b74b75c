import type { ChannelRecipe } from '@pullbook/contracts';
import type { WorkshopTransaction } from '@pullbook/database';
import { DomainError } from '../plumbing/domain-error.js';
import { presentRecipe } from './present-recipe.js';

/**
 * One channel recipe.
 * @throws DomainError not-found
 */
export async function getRecipe(db: WorkshopTransaction, id: string): Promise<ChannelRecipe> {
  const row = await db.channelRecipe.findUnique({ where: { id } });
  if (!row) throw new DomainError('not-found', 'there is no channel recipe of this id');
  return presentRecipe(row);
}

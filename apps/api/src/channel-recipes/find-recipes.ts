import type { ChannelRecipe } from '@pullbook/contracts';
import type { WorkshopTransaction } from '@pullbook/database';
import { presentRecipe } from './present-recipe.js';

/** A workshop has as many loggers as it has; this bounds what a wrong program could pile up. */
const MOST_RECIPES = 500;

/** The workshop's channel recipes, by name. */
export async function findRecipes(db: WorkshopTransaction): Promise<ChannelRecipe[]> {
  const orderBy = [{ name: 'asc' as const }, { id: 'asc' as const }];
  return (await db.channelRecipe.findMany({ orderBy, take: MOST_RECIPES })).map(presentRecipe);
}

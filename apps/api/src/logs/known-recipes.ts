import type { WorkshopTransaction } from '@pullbook/database';
import type { KnownRecipe } from '@pullbook/tuning-math';
import { findRecipes } from '../channel-recipes/find-recipes.js';

/** The workshop's recipes as the reader of logs wants them. */
export async function knownRecipes(db: WorkshopTransaction): Promise<KnownRecipe[]> {
  return (await findRecipes(db)).map(({ id, shape, reading }) => ({ id, shape, recipe: reading }));
}

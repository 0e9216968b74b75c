import type { ChannelRecipe } from '../channel-recipe.js';
import { LogError } from '../log-error.js';
import { logShape, shapeKey, type LogShape } from './log-shape.js';
import { layoutOfHead } from './read-log-head.js';

/** A recipe and the shape of the logs that it is for. */
export interface KnownRecipe {
  readonly id: string;
  readonly shape: LogShape;
  readonly recipe: ChannelRecipe;
}

/**
 * The recipe that was kept for logs of this shape: same headers in the same order, same unit row, as they read
 * under the recipe's own delimiter and decimal mark. Null where none fits; a log that only resembles one is not
 * read by it.
 *
 * @param bytes the first of the file
 * Cost: O(64 kB) for each unlike pair of delimiter and decimal mark among the recipes.
 */
export function matchRecipe<T extends KnownRecipe>(bytes: Uint8Array, recipes: readonly T[]): T | null {
  const keys = new Map<string, string | null>();
  const found = recipes.find(({ shape, recipe }) => {
    const how = `${recipe.delimiter ?? ''} ${recipe.decimalMark ?? ''}`;
    if (!keys.has(how)) keys.set(how, keyUnder(bytes, recipe));
    return keys.get(how) === shapeKey(shape);
  });
  return found ?? null;
}

function keyUnder(bytes: Uint8Array, recipe: ChannelRecipe): string | null {
  try {
    return shapeKey(logShape(layoutOfHead(bytes, recipe)));
  } catch (error) {
    if (error instanceof LogError) return null;
    throw error;
  }
}

import { ChannelReading, LogShape, type ChannelRecipe } from '@pullbook/contracts';
import type * as rows from '@pullbook/database';

/** A channel recipe as it goes out. */
export function presentRecipe(row: rows.ChannelRecipe): ChannelRecipe {
  return {
    id: row.id,
    name: row.name,
    shape: LogShape.parse(row.shape),
    reading: ChannelReading.parse(row.reading),
    revision: row.revision,
    createdAt: row.createdAt.toISOString(),
  };
}

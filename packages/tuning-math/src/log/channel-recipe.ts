import type { ChannelQuantity } from './channel-quantities.js';

/** What the workshop once said about one column. */
export interface RecipeColumn {
  /** Header as in the file; compared without regard to case, spaces and punctuation. */
  readonly header: string;
  /** Which of several columns of that header, from 0; 0 when left out. */
  readonly occurrence?: number;
  readonly quantity: ChannelQuantity;
  readonly unit: string;
}

/** How the workshop reads the files of one logger: overrides what would be recognised. */
export interface ChannelRecipe {
  readonly columns: readonly RecipeColumn[];
  /** Rate of the rows where the file has no time column. */
  readonly sampleRateHz?: number | null;
  readonly decimalMark?: '.' | ',' | null;
  readonly delimiter?: ',' | ';' | '\t' | '|' | null;
}

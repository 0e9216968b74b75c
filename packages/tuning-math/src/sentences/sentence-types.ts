/**
 * A number of a sentence with its unit, rounded as the sentence says it. `points` are points of per cent; pressures are
 * kPa gauge.
 */
export interface Amount {
  readonly value: number;
  /** Upper end, where the sentence gives a range from `value` up. */
  readonly to?: number | undefined;
  readonly unit: 'kPa' | '%' | 'points' | 'Hz' | 's' | 'r/min';
}

/** Plain words, or a number that whoever shows the sentence writes in the reader's unit. */
export type SentencePiece = string | Amount;

/** What the book says, whole in kPa, and in pieces for a reader with another unit. */
export interface Sentence {
  readonly text: string;
  readonly pieces: readonly SentencePiece[];
}

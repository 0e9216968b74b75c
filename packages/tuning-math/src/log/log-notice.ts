import type { SentencePiece } from '../sentences/index.js';

/** A code for programs and a plain sentence for people. */
export interface LogNotice {
  readonly code: string;
  readonly text: string;
  /** The same in pieces, where it holds figures that a reader may want in another unit. */
  readonly pieces?: readonly SentencePiece[];
}

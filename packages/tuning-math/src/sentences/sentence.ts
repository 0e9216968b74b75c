import type { Amount, Sentence, SentencePiece } from './sentence-types.js';
import { writeSentence } from './write-sentence.js';

/**
 * Tag of a template that is a sentence of the book: its amounts stay numbers with their units, so that nobody has to
 * find them in the words again.
 *
 * @param filled words as they are, amounts, or sentences to take in whole
 * @throws NotFiniteError for an amount that is not finite
 * @example sentence`Expect ${amount(140, 'kPa')}.` // text 'Expect 140 kPa.'
 */
export function sentence(
  words: TemplateStringsArray,
  ...filled: readonly (string | Amount | Sentence)[]
): Sentence {
  const pieces = words.flatMap((text, index) => [text, ...piecesOf(filled[index] ?? '')]).reduce(joined, []);
  return { text: writeSentence(pieces, 'kPa'), pieces };
}

const piecesOf = (part: string | Amount | Sentence): readonly SentencePiece[] =>
  typeof part !== 'string' && 'pieces' in part ? part.pieces : [part];

/** Words beside words are one piece; an empty one is none. */
function joined(pieces: readonly SentencePiece[], piece: SentencePiece): SentencePiece[] {
  const last = pieces.at(-1);
  if (piece === '') return [...pieces];
  if (typeof piece !== 'string' || typeof last !== 'string') return [...pieces, piece];
  return [...pieces.slice(0, -1), last + piece];
}

export { amount } from './amount.js';
export { sentence } from './sentence.js';
export type { Amount, Sentence, SentencePiece } from './sentence-types.js';
export { writeSentence } from './write-sentence.js';

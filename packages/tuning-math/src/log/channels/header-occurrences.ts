import { foldWords } from './header-words.js';

/** For each header, how many equal ones stand before it; compared without case, spaces and punctuation. Cost: O(n). */
export function headerOccurrences(headers: readonly string[]): number[] {
  const seen = new Map<string, number>();
  return headers.map((header) => {
    const folded = foldWords(header);
    const before = seen.get(folded) ?? 0;
    seen.set(folded, before + 1);
    return before;
  });
}

/**
 * Text as it is searched: lower case, without spaces and marks, accents taken off, so that "+44 20" finds "04420" typed
 * another way and both databases find the same.
 */
export function searchText(...parts: readonly (string | null | undefined)[]): string {
  return parts
    .map((part) =>
      (part ?? '')
        .normalize('NFKD')
        .toLowerCase()
        .replace(/[^\p{Letter}\p{Number}@]/gu, ''),
    )
    .filter((part) => part !== '')
    .join(' ');
}

/** The words that somebody typed into a search field, in the same form: each of them must be found. */
export function searchWords(typed: string | undefined): string[] {
  return (typed ?? '')
    .split(/\s+/)
    .map((word) => searchText(word))
    .filter((word) => word !== '');
}

/** How a pull is told apart without colour: filled, hollow, or square because it passed the ceiling. */
export type SortOfPull = 'pull' | 'void' | 'over';

/** A void pull stays void, whatever it read; any other that read above the ceiling passed it. */
export function sortOfPull(
  pull: { readonly peakKpa: number; readonly isVoid: boolean },
  ceilingKpa: number | null,
): SortOfPull {
  if (pull.isVoid) return 'void';
  return ceilingKpa !== null && pull.peakKpa > ceilingKpa ? 'over' : 'pull';
}

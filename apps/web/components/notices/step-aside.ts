/**
 * Moves the notices to the other edge of the window where they would lie over what has the focus: the key that was just
 * pressed, the field being typed into (WCAG 2.4.11).
 */
export function stepAside(place: HTMLElement): void {
  const focused = document.activeElement;
  if (focused === null || focused === document.body || place.contains(focused)) return;
  const [a, b] = [focused.getBoundingClientRect(), place.getBoundingClientRect()];
  const isUnder = a.left < b.right && a.right > b.left && a.top < b.bottom && a.bottom > b.top;
  if (isUnder) place.dataset['edge'] = place.dataset['edge'] === 'above' ? 'below' : 'above';
}

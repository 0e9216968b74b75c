/**
 * Puts the notices at the lower edge of the window, or at the upper one where they would lie over what has the focus
 * below: the key that was just pressed, the field being typed into (WCAG 2.4.11).
 */
export function stepAside(place: HTMLElement): void {
  const focused = document.activeElement;
  if (focused === null || place.contains(focused)) return;
  place.dataset['edge'] = 'below';
  if (focused === document.body) return;
  const [a, b] = [focused.getBoundingClientRect(), place.getBoundingClientRect()];
  const isUnder = a.left < b.right && a.right > b.left && a.top < b.bottom && a.bottom > b.top;
  if (isUnder) place.dataset['edge'] = 'above';
}

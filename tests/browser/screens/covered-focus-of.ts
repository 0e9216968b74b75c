import type { Page } from 'playwright-core';

/**
 * Controls that nobody sees while they have the focus, WCAG 2.4.11: wholly covered by what stands still while the page
 * scrolls under it. The focus goes through the page as the Tab key takes it, then back as Shift+Tab does, and the page
 * is scrolled by the browser alone. With a sheet open only what is in it counts.
 *
 * @param within looks at the controls in here alone
 */
export function coveredFocusOf(page: Page, within?: string): Promise<string[]> {
  return page.evaluate((place) => {
    const root = document.querySelector(place ?? 'dialog[open]') ?? document.body;
    const before = document.activeElement;
    /** The box around that stands still, fixed or sticky; null where it moves with the page. */
    const stillAround = (element: Element | null): Element | null => {
      for (let box = element; box !== null; box = box.parentElement) {
        if (/fixed|sticky/.test(getComputedStyle(box).position)) return box;
      }
      return null;
    };
    const isSeenAt = (control: HTMLElement, x: number, y: number): boolean => {
      const hit = document.elementFromPoint(x, y);
      if (hit === null || control.contains(hit) || hit.contains(control)) return true;
      const cover = stillAround(hit);
      return cover === null || cover.contains(control);
    };
    /** Looks at a net of points over what is in the window of a control: one that is seen is enough. */
    const isSeen = (control: HTMLElement): boolean => {
      const { left, right, top, bottom } = control.getBoundingClientRect();
      const [fromX, toX] = [Math.max(left, 0), Math.min(right, window.innerWidth)];
      const [fromY, toY] = [Math.max(top, 0), Math.min(bottom, window.innerHeight)];
      if (fromX >= toX || fromY >= toY) return false;
      const shares = [0.02, 0.25, 0.5, 0.75, 0.98];
      return shares.some((across) =>
        shares.some((down) =>
          isSeenAt(control, fromX + across * (toX - fromX), fromY + down * (toY - fromY)),
        ),
      );
    };
    const stops = [
      ...root.querySelectorAll<HTMLElement>(
        'a[href], button, input, select, textarea, summary, [tabindex="0"]',
      ),
    ].filter(
      (one) =>
        !one.matches(':disabled') &&
        one.tabIndex >= 0 &&
        one.getClientRects().length > 0 &&
        one.checkVisibility({ visibilityProperty: true }),
    );
    const lookAt = (control: HTMLElement): string[] => {
      control.focus();
      if (document.activeElement !== control || isSeen(control)) return [];
      const name = (control.getAttribute('aria-label') ?? control.innerText).trim().slice(0, 50);
      return [`${control.tagName.toLowerCase()} “${name || control.id}” has the focus and is not seen`];
    };
    window.scrollTo(0, 0);
    const found = [...stops.flatMap(lookAt), ...stops.toReversed().flatMap(lookAt)];
    if (before instanceof HTMLElement) before.focus();
    return [...new Set(found)];
  }, within);
}

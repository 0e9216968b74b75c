import type { Page } from 'playwright-core';

/**
 * Controls that cannot be got at. Each is given the focus, as the Tab key would: then it must not lie outside at the
 * side, and scrolled towards the middle of the window it has to be free of everything that stands still. With a sheet
 * open only what is in it counts.
 *
 * @param within looks at the controls in here alone
 */
export function hiddenControlsOf(page: Page, within?: string): Promise<string[]> {
  return page.evaluate((place) => {
    const slack = 2;
    const root = document.querySelector(place ?? 'dialog[open]') ?? document.body;
    const before = document.activeElement;
    const wide = document.documentElement.clientWidth;
    const isReached = (control: HTMLElement) =>
      !control.matches(':disabled') &&
      control.tabIndex >= 0 &&
      control.getClientRects().length > 0 &&
      control.checkVisibility({ visibilityProperty: true });
    /** Whether a press on the middle of what is in the window of it reaches it. */
    const isFree = (control: HTMLElement): boolean => {
      const { left, right, top, bottom } = control.getBoundingClientRect();
      const [from, to] = [Math.max(top, 0), Math.min(bottom, window.innerHeight)];
      const x = (Math.max(left, 0) + Math.min(right, wide)) / 2;
      const hit = document.elementFromPoint(x, (from + to) / 2);
      if (hit === null) return false;
      const labels = [...((control as HTMLInputElement).labels ?? [])];
      return control.contains(hit) || hit.contains(control) || labels.some((one) => one.contains(hit));
    };
    const faultOf = (control: HTMLElement): string | null => {
      control.focus();
      if (document.activeElement !== control) return 'takes no focus';
      const { left, right } = control.getBoundingClientRect();
      // A place that takes the focus only to be scrolled may be wider than the window.
      const isPlace = control.getAttribute('tabindex') === '0';
      if (!isPlace && (left < -slack || right > wide + slack)) {
        return `lies outside at the side, from ${left.toFixed(0)} to ${right.toFixed(0)} px`;
      }
      control.scrollIntoView({ block: 'center', inline: 'nearest', behavior: 'instant' });
      return isFree(control) ? null : 'is covered';
    };
    const found = [
      ...root.querySelectorAll<HTMLElement>(
        'a[href], button, input, select, textarea, summary, [tabindex="0"]',
      ),
    ]
      .filter(isReached)
      .flatMap((control) => {
        const fault = faultOf(control);
        const name = (control.getAttribute('aria-label') ?? control.innerText).trim().slice(0, 50);
        return fault === null ? [] : [`${control.tagName.toLowerCase()} “${name || control.id}” ${fault}`];
      });
    if (before instanceof HTMLElement) before.focus();
    return found;
  }, within);
}

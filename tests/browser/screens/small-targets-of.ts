import type { Page } from 'playwright-core';

/**
 * Targets of a pointer smaller than `leastPx` either way, WCAG 2.5.8 (24 px). What is pressed along with a control
 * counts as its target: its label. Links in the middle of a sentence are excepted there, and here; the exception for
 * small targets with room around them is not used.
 */
export function smallTargetsOf(page: Page, leastPx: number): Promise<string[]> {
  return page.evaluate((least) => {
    const root = document.querySelector('dialog[open]') ?? document.body;
    const isInSentence = (element: Element) => {
      const around = (element.parentElement?.textContent ?? '').trim();
      const own = (element.textContent ?? '').trim();
      return getComputedStyle(element).display === 'inline' && around.length > own.length + 1;
    };
    const sizeOf = (control: HTMLElement): { width: number; height: number } => {
      const isTicked = control.matches('[type="checkbox"], [type="radio"]');
      const labels = isTicked ? [...((control as HTMLInputElement).labels ?? [])] : [];
      const boxes = [control, ...labels].map((one) => one.getBoundingClientRect());
      return {
        width: Math.max(...boxes.map((one) => one.right)) - Math.min(...boxes.map((one) => one.left)),
        height: Math.max(...boxes.map((one) => one.bottom)) - Math.min(...boxes.map((one) => one.top)),
      };
    };
    return [...root.querySelectorAll<HTMLElement>('a[href], button, input, select, textarea, summary')]
      .filter(
        (one) => !one.matches(':disabled, .unseen') && one.checkVisibility({ visibilityProperty: true }),
      )
      .filter((one) => !isInSentence(one))
      .flatMap((control) => {
        const { width, height } = sizeOf(control);
        // Half a pixel is rounding.
        if (Math.min(width, height) >= least - 0.5) return [];
        const name = (control.getAttribute('aria-label') ?? control.innerText).trim().slice(0, 50);
        const size = `${width.toFixed(0)} by ${height.toFixed(0)} px`;
        return [`${control.tagName.toLowerCase()} “${name || control.id}” is ${size}`];
      });
  }, leastPx);
}

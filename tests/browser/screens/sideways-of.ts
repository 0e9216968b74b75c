import type { Page } from 'playwright-core';

/** By how much the page has to be scrolled sideways to be read, WCAG 1.4.10; empty where it has not. */
export function sidewaysOf(page: Page): Promise<string[]> {
  return page.evaluate(() => {
    const { scrollWidth, clientWidth } = document.documentElement;
    return scrollWidth > clientWidth ? [`the page is ${scrollWidth} px wide in ${clientWidth} px`] : [];
  });
}

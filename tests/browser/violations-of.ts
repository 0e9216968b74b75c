import AxeBuilder from '@axe-core/playwright';
import type { Page } from 'playwright-core';

/** Accessibility faults that axe finds on a page as it stands, each with the elements that have it. */
export async function violationsOf(page: Page): Promise<string[]> {
  const { violations } = await new AxeBuilder({ page })
    // All of a page is its own: no frame of another origin has to be asked.
    .setLegacyMode(true)
    .options({ resultTypes: ['violations'] })
    .analyze();
  return violations.map(
    ({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html.slice(0, 120)).join(' | ')}`,
  );
}

import { expect, test } from 'vitest';
import { sharedBrowser } from './shared-browser.js';
import { sharedOrigin } from './shared-origin.js';
import { weighScripts } from './weigh-scripts.js';

const browser = sharedBrowser();

test('the visit screen and the customer’s report load no more script than their budgets allow', async () => {
  const weights = await weighScripts(browser(), sharedOrigin());
  expect(weights.map((one) => one.page)).toEqual(['visit', 'report']);
  for (const { page, gzipBytes, budgetBytes } of weights) {
    expect(gzipBytes, `scripts of ${page}`).toBeLessThanOrEqual(budgetBytes);
  }
  // The visit screen cannot work without any: nothing counted would mean that nothing was weighed.
  expect(weights[0]?.gzipBytes).toBeGreaterThan(50_000);
});

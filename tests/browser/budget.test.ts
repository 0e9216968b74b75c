import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { launchChromium } from './chromium.js';
import { startProduct, type Product } from './product.js';
import { weighScripts } from './weigh-scripts.js';

let product: Product;
let browser: Browser;

beforeAll(async () => {
  product = await startProduct('demo');
  browser = await launchChromium();
});
afterAll(async () => {
  await browser?.close();
  await product?.stop();
});

test('the visit screen and the customer’s report load no more script than their budgets allow', async () => {
  const weights = await weighScripts(browser, product.origin);
  expect(weights.map((one) => one.page)).toEqual(['visit', 'report']);
  for (const { page, gzipBytes, budgetBytes } of weights) {
    expect(gzipBytes, `scripts of ${page}`).toBeLessThanOrEqual(budgetBytes);
  }
  // The visit screen cannot work without any: nothing counted would mean that nothing was weighed.
  expect(weights[0]?.gzipBytes).toBeGreaterThan(50_000);
});

import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, inject, test } from 'vitest';
import { launchChromium } from './chromium.js';
import { findCard } from './find-card.js';
import { longLog } from './long-log.js';
import { startProduct, type Product } from './product.js';
import { signIn } from './sign-in.js';
import { violationsOf } from './violations-of.js';

let product: Product;
let browser: Browser;
let context: BrowserContext;
let page: Page;
let plate: string;

beforeAll(async () => {
  product = await startProduct('demo', inject('demoBook'));
  browser = await launchChromium();
  ({ context, page } = await signIn(browser, product.origin, 'tuner@pullbook.example', {
    viewport: { width: 1280, height: 900 },
  }));
  ({ plate } = await findCard(page, /^next pull/i));
});
afterAll(async () => {
  await browser?.close();
  await product?.stop();
});

const log = (name: string, rows: number) => ({ name, mimeType: 'text/csv', buffer: longLog(rows, 3) });
const waiting = () => page.getByRole('region', { name: 'Waiting for a tuning session' });
const rowOf = (name: string) =>
  waiting()
    .getByRole('listitem')
    .filter({ has: page.locator('b', { hasText: name }) });

describe('a day of logs', () => {
  test('takes in many files at once, suggests the car, and assigns nothing by itself', async () => {
    await page.goto('/logs');
    await page
      .getByLabel('Log files')
      .setInputFiles([
        log(`run 1 ${plate}.csv`, 12_000),
        log('unnamed.csv', 12_400),
        log('copy.csv', 12_400),
        { name: 'note.csv', mimeType: 'text/csv', buffer: Buffer.from('nothing\nto see\n') },
      ]);
    await rowOf('note.csv').waitFor();
    expect(await waiting().getByRole('listitem').count()).toBe(4);
    const named = rowOf(`run 1 ${plate}.csv`);
    expect(await named.getByRole('combobox').locator('option:checked').innerText()).toContain(plate);
    expect(await named.innerText()).toContain(`the file name holds the plate ${plate}`);
    expect(await rowOf('note.csv').innerText()).toContain('not understood');
    expect(await rowOf('copy.csv').innerText()).toMatch(/the same bytes as unnamed.csv/);
    expect(await page.getByRole('heading', { name: 'Assigned just now' }).count()).toBe(0);
    expect(await violationsOf(page)).toEqual([]);
  });

  test('makes a file a log of the visit when a person says so, and opens its pulls', async () => {
    const named = rowOf(`run 1 ${plate}.csv`);
    await named.getByRole('button', { name: 'Assign' }).click();
    const assigned = page.getByRole('region', { name: 'Assigned just now' });
    await assigned.getByText('1 pull found').waitFor();
    await named.waitFor({ state: 'detached' });
    await assigned.getByRole('button', { name: 'Look at the pulls' }).click();
    const dialog = page.getByRole('dialog');
    await dialog.waitFor();
    expect(await violationsOf(page)).toEqual([]);
    await page.keyboard.press('Escape');
    await dialog.waitFor({ state: 'detached' });
  });

  test('keeps the others in sight after the page is loaded anew, and throws one away when asked', async () => {
    await page.reload();
    await rowOf('unnamed.csv').waitFor();
    expect(await waiting().getByRole('listitem').count()).toBe(3);
    await page.getByRole('button', { name: 'Throw away note.csv' }).click();
    await rowOf('note.csv').waitFor({ state: 'detached' });
  });

  test('fits a phone, by day and by night', async () => {
    await page.setViewportSize({ width: 360, height: 780 });
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(360);
    await page.emulateMedia({ colorScheme: 'dark' });
    expect(await violationsOf(page)).toEqual([]);
    await context.close();
  });
});

import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { findCard } from './find-card.js';
import { sharedBrowser } from './shared-browser.js';
import { sharedOrigin } from './shared-origin.js';
import { signIn } from './sign-in.js';
import { violationsOf } from './violations-of.js';

const origin = sharedOrigin();
const browser = sharedBrowser();

const field = (page: Page) => page.getByRole('combobox', { name: /^Plate, name/ });

test('a car’s visit is opened from another visit by keys alone, plate typed without its blanks', async () => {
  const { context, page } = await signIn(browser(), origin, 'tuner@pullbook.example');
  const wanted = await findCard(page, /^next pull/i);
  const elsewhere = await findCard(page, /stop/i);
  await page.goto(`/visits/${elsewhere.visitId}`);
  await page.getByRole('button', { name: 'Find', exact: true }).waitFor();
  await page.keyboard.press('Control+k');
  await field(page).waitFor();
  await page.keyboard.type(wanted.plate.replaceAll(/[\s-]/g, '').toLowerCase());
  const line = page.getByRole('option').filter({ hasText: wanted.plate }).first();
  await line.waitFor();
  expect(await line.getAttribute('aria-selected')).toBe('true');
  expect(await field(page).getAttribute('aria-activedescendant')).toBe(await line.getAttribute('id'));
  expect(await violationsOf(page)).toEqual([]);
  await page.keyboard.press('Enter');
  await page.waitForURL(`**/visits/${wanted.visitId}`);
  expect(await page.getByRole('dialog').count()).toBe(0);
  await context.close();
});

test('Enter waits for the answer to what was typed last, instead of opening what was found before', async () => {
  const { context, page } = await signIn(browser(), origin, 'tuner@pullbook.example', {
    serviceWorkers: 'block',
  });
  const { plate } = await findCard(page, /^next pull/i);
  await page.route('**/api/v1/search?*', async (route) => {
    const asked = new URL(route.request().url()).searchParams.get('q');
    if (asked !== plate) await page.waitForTimeout(1500);
    return route.continue();
  });
  await page.keyboard.press('Control+k');
  await field(page).fill(plate);
  await page.getByRole('option').filter({ hasText: plate }).first().waitFor();
  await field(page).fill('gate hold');
  await page.getByRole('option', { name: /Gate hold/ }).waitFor();
  expect(await page.getByRole('option').filter({ hasText: plate }).count()).toBeGreaterThan(0);
  await page.keyboard.press('Enter');
  await page.waitForURL('**/words#gate_hold');
  await context.close();
});

test('the slash key opens the finder, arrows choose a page, Escape gives the focus back', async () => {
  const { context, page } = await signIn(browser(), origin, 'desk@pullbook.example');
  const opener = page.getByRole('button', { name: 'Find', exact: true });
  await opener.focus();
  await page.keyboard.press('/');
  await field(page).waitFor();
  expect(await page.getByRole('option', { name: /Workshop/ }).count()).toBe(0);
  await page.keyboard.press('Escape');
  await field(page).waitFor({ state: 'detached' });
  expect(await opener.evaluate((button) => button === document.activeElement)).toBe(true);
  await page.keyboard.press('/');
  await page.keyboard.press('ArrowDown');
  await page.keyboard.press('Enter');
  await page.waitForURL('**/customers');
  await context.close();
});

test('the slash key can be switched off for this device, and types itself into fields', async () => {
  const { context, page } = await signIn(browser(), origin, 'desk@pullbook.example');
  await page.getByRole('searchbox').first().focus();
  await page.keyboard.press('/');
  expect(await page.getByRole('searchbox').first().inputValue()).toBe('/');
  await page.getByRole('button', { name: 'Find', exact: true }).click();
  await page.getByRole('checkbox').uncheck();
  await page.keyboard.press('Escape');
  await page.getByRole('button', { name: 'Find', exact: true }).focus();
  await page.keyboard.press('/');
  await page.waitForTimeout(300);
  expect(await field(page).count()).toBe(0);
  await context.close();
});

import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { findCard } from './find-card.js';
import { sharedBrowser } from './shared-browser.js';
import { sharedOrigin } from './shared-origin.js';
import { signIn } from './sign-in.js';
import { violationsOf } from './violations-of.js';

const origin = sharedOrigin();
const browser = sharedBrowser();
const ownItem = 'Is the loan car back in the yard?';

const checklist = (page: Page) => page.getByRole('region', { name: 'Checklist of the sign-off' });
const overflowOf = (page: Page) =>
  page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);

/** Opens the list for changes and waits until it stands there. */
async function beginChange(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Change checklist' }).click();
  await page.getByRole('form', { name: 'Change the checklist' }).waitFor();
}

test('a tuner adds an item by keyboard, whoever is about to sign is told, and built-in items stay', async () => {
  const { context, page } = await signIn(browser(), origin, 'tuner@pullbook.example');
  const signing = await context.newPage();
  const open = await findCard(page, /^next pull/i);
  await signing.goto(`/visits/${open.visitId}/sign-off`);
  await signing.getByRole('checkbox', { name: /no fault lamps/ }).check();
  await page.goto('/workshop');
  await beginChange(page);
  expect(await page.getByRole('button', { name: /^Remove item/ }).count()).toBe(0);
  expect(await page.getByText('Stays in the list.').count()).toBe(7);
  await page.getByRole('button', { name: 'Add an item of our own' }).focus();
  await page.keyboard.press('Enter');
  await page.waitForFunction(() => document.activeElement?.id.startsWith('text-new'));
  await page.keyboard.type(ownItem);
  const up = page.getByRole('button', { name: 'Move item 8 up' });
  await up.focus();
  await page.keyboard.press('Enter');
  await page.getByText('Now at place 7 of 8.').waitFor();
  await page.waitForFunction(() => document.activeElement?.id.startsWith('up-new'));
  expect(await page.getByLabel('Item 7', { exact: true }).inputValue()).toBe(ownItem);
  expect(await violationsOf(page)).toEqual([]);
  await page.setViewportSize({ width: 360, height: 780 });
  expect(await overflowOf(page)).toBe(0);
  await page.getByRole('button', { name: 'Save as new revision' }).click();
  await checklist(page)
    .getByRole('listitem')
    .nth(6)
    .getByText(/^[+] ?our own$/)
    .waitFor();

  // Live, on the other screen: the new item is there, what was ticked stays, and it is said that the list changed.
  await signing.getByText('The checklist changed while you were on it').waitFor();
  await signing.getByRole('checkbox', { name: ownItem }).waitFor();
  expect(await signing.getByRole('checkbox', { name: /no fault lamps/ }).isChecked()).toBe(true);
  expect(await violationsOf(signing)).toEqual([]);
  await signing.getByRole('button', { name: 'I have seen it' }).click();

  await beginChange(page);
  await page.getByRole('button', { name: 'Remove item 7' }).click();
  await page.getByRole('button', { name: 'Save as new revision' }).click();
  await checklist(page)
    .getByText(/^[+] ?our own$/)
    .waitFor({ state: 'detached' });
  expect(await checklist(page).getByRole('listitem').count()).toBe(7);
  await context.close();
});

test('the front desk reads the checklist and changes nothing', async () => {
  const { context, page } = await signIn(browser(), origin, 'desk@pullbook.example');
  await page.goto('/workshop');
  await checklist(page).getByRole('listitem').first().waitFor();
  expect(await page.getByRole('button', { name: 'Change checklist' }).count()).toBe(0);
  expect(await page.getByRole('button', { name: 'Save paper header' }).count()).toBe(0);
  const answer = await page.request.get('/api/v1/sign-off-checklist');
  const { items } = (await answer.json()) as { items: Array<{ key: string; text: string }> };
  const refused = await page.request.put('/api/v1/sign-off-checklist', {
    data: { items: items.map(({ key, text }) => ({ key, text })) },
    headers: { 'if-match': answer.headers()['etag'] ?? '', origin },
  });
  expect(refused.status()).toBe(403);
  await context.close();
});

test('the owner sees the paper header as it is typed, and the customer finds it on the report', async () => {
  const { context, page } = await signIn(browser(), origin, 'owner@pullbook.example');
  const ready = await findCard(page, /report/i);
  await page.goto('/workshop');
  const foot = page.getByLabel('Line at the foot');
  const before = await foot.inputValue();
  const line = `Quay 3, second yard <b>& sons</b> ${'long '.repeat(20)}`.trim();
  await foot.fill(line);
  await page.getByRole('figure').getByText(line).waitFor();
  await foot.fill('x'.repeat(161));
  await page.getByRole('button', { name: 'Save paper header' }).click();
  expect(await foot.getAttribute('aria-invalid')).toBe('true');
  expect(await violationsOf(page)).toEqual([]);
  await foot.fill(line);
  await page.getByRole('button', { name: 'Save paper header' }).click();
  await page.getByText('Paper header saved.').waitFor();

  const made = await page.request.post(`/api/v1/visits/${ready.visitId}/report`, { headers: { origin } });
  const { url } = (await made.json()) as { url: string };
  const customer = await browser().newPage({ baseURL: origin, viewport: { width: 360, height: 780 } });
  await customer.goto(url);
  await customer.getByText(line).waitFor();
  expect(await customer.getByRole('link', { name: /^Call the workshop/ }).getAttribute('href')).toMatch(
    /^tel:[+0-9]+$/,
  );
  expect(await overflowOf(customer)).toBe(0);
  expect(await violationsOf(customer)).toEqual([]);
  await customer.close();

  await foot.fill(before);
  await page.getByRole('button', { name: 'Save paper header' }).click();
  await page.waitForFunction(
    (text) => document.querySelector('figure')?.textContent?.includes(text) === true,
    before,
  );
  await context.close();
});

test('a word beside a figure explains itself by keyboard, and the finder leads to all words', async () => {
  const { context, page } = await signIn(browser(), origin, 'tuner@pullbook.example');
  const driven = await findCard(page, /^next pull/i);
  await page.goto(`/visits/${driven.visitId}`);
  const asked = page.getByRole('button', { name: /^Chance of passing the ceiling/ });
  await asked.focus();
  await page.keyboard.press('Enter');
  const told = page.getByRole('dialog', { name: 'Chance of passing the ceiling' });
  await told.getByText('How likely the next pull is to peak above the ceiling').waitFor();
  expect(await violationsOf(page)).toEqual([]);
  await page.keyboard.press('Escape');
  await told.waitFor({ state: 'detached' });
  expect(await asked.evaluate((button) => button === document.activeElement)).toBe(true);
  expect((await asked.boundingBox())?.height).toBeGreaterThanOrEqual(48);
  await page.keyboard.press('Control+k');
  await page.getByRole('combobox').waitFor();
  await page.keyboard.type('gate hold');
  await page.getByRole('option', { name: /Gate hold/ }).waitFor();
  await page.keyboard.press('Enter');
  await page.waitForURL('**/words#gate_hold');
  await page.getByText('Up to this share of the target the actuator is kept shut.').waitFor();
  await context.close();
});

test('the page of words is there for everybody, signed in or not, by day and by night', async () => {
  const page = await browser().newPage({ baseURL: origin, viewport: { width: 360, height: 780 } });
  await page.goto('/words');
  for (const colorScheme of ['light', 'dark'] as const) {
    await page.emulateMedia({ colorScheme });
    expect(await violationsOf(page)).toEqual([]);
  }
  expect(await page.getByRole('term').count()).toBeGreaterThan(20);
  expect(await overflowOf(page)).toBe(0);
  await page.close();
});

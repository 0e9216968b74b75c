import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { cardAt } from './screens/places.js';
import { sharedBrowser } from './shared-browser.js';
import { sharedOrigin } from './shared-origin.js';
import { signIn } from './sign-in.js';

const origin = sharedOrigin();
const browser = sharedBrowser();

const buttonsOf = (page: Page) => page.locator('main').getByRole('button');

/** Presses everything in sight that can be pressed, sheets that open left by Escape. @returns how many */
async function pressAll(page: Page): Promise<number> {
  const count = await buttonsOf(page).count();
  for (let n = 0; n < count; n += 1) {
    const button = buttonsOf(page).nth(n);
    if (await button.isDisabled()) continue;
    const opensSheet = (await button.getAttribute('aria-haspopup')) === 'dialog';
    await button.click();
    if (!opensSheet) continue;
    const sheet = page.getByRole('dialog');
    await sheet.waitFor();
    await page.keyboard.press('Escape');
    await sheet.waitFor({ state: 'detached' });
  }
  await page.waitForLoadState('networkidle');
  return count;
}

/** What the server refused on this page from now on. */
function refusalsOf(page: Page): string[] {
  const refused: string[] = [];
  page.on('response', (answer) => {
    if (answer.status() >= 400) refused.push(`${answer.request().method()} ${answer.url()}`);
  });
  return refused;
}

describe.each(['ready', 'collected'])('a visit that is %s', (stage) => {
  test('says that it is closed, can be read, and offers nothing that the server refuses', async () => {
    const { context, page } = await signIn(browser(), origin, 'tuner@pullbook.example');
    const { visitId } = await cardAt(page, stage);
    const refused = refusalsOf(page);
    await page.goto(`/visits/${visitId}`);
    await page.getByRole('heading', { name: 'This visit is closed' }).waitFor();
    await page.getByRole('table').getByRole('row').nth(1).waitFor();
    const main = page.locator('main');
    const said = await main.innerText();
    expect(said).toMatch(/Nothing more is advised or recorded/);
    expect(said).toMatch(/signed off/);
    expect(said).toMatch(/Stored now: duty/);
    expect(said).toMatch(/of all pulls peak at/);
    expect(said).not.toMatch(/No advice yet|Missing/);
    const names = await buttonsOf(page).allInnerTexts();
    expect(names.join()).not.toMatch(/Void|Record|Keep|Add preset|log|Start/i);
    expect(await page.getByLabel('Log file').count()).toBe(0);
    expect(await pressAll(page)).toBeGreaterThan(2);
    const papers = main.getByRole('link', { name: 'Sign-off and report' });
    await papers.click();
    await page.getByRole('heading', { name: 'Report for the customer' }).waitFor();
    expect(refused).toEqual([]);
    await context.close();
  });
});

test('the page about a collected visit is read, not filled in, and leads back to ready alone', async () => {
  const { context, page } = await signIn(browser(), origin, 'desk@pullbook.example');
  const { visitId } = await cardAt(page, 'collected');
  await page.goto(`/visits/${visitId}/about`);
  await page.getByText('This visit is closed.').waitFor();
  expect(await page.getByRole('button', { name: 'Save visit' }).count()).toBe(0);
  const stages = page.getByRole('group', { name: 'Stage of the visit' });
  const open = await stages.locator('button:enabled').allInnerTexts();
  expect(open.map((one) => one.replace(/\W/g, ''))).toEqual(['Ready', 'Collected']);
  const refused = refusalsOf(page);
  await stages.getByRole('button', { name: 'Ready' }).click();
  await page.getByLabel('Wishes').waitFor();
  await stages.getByRole('button', { name: 'Collected' }).click();
  await page.getByLabel('Wishes').waitFor({ state: 'detached' });
  expect(refused).toEqual([]);
  await context.close();
});

import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { Keyboard, stopOf } from './keyboard.js';
import { readingKpa, trueMeanPeakKpa } from './known-response.js';
import { sharedBrowser } from './shared-browser.js';
import { sharedOrigin } from './shared-origin.js';

const goal = { targetKpa: 120, toleranceKpa: 4, ceilingKpa: 131 };
const plate = 'TST 743';

const origin = sharedOrigin();
const browser = sharedBrowser();

const heading = (page: Page, name: string | RegExp): Promise<void> =>
  page.getByRole('heading', { name }).first().waitFor();

describe('the whole job by keys alone', () => {
  test('from signing in to the report link and the moved card, every stop showing that it has the focus', async () => {
    const context = await browser().newContext({ baseURL: origin, viewport: { width: 1180, height: 820 } });
    const page = await context.newPage();
    const keys = new Keyboard(page);
    await page.goto('/sign-in');
    await heading(page, /./);
    await keys.write('Email', 'owner@pullbook.example');
    await keys.write('Password', 'practice-only');
    await page.keyboard.press('Enter');
    await page.waitForURL('**/board');

    await takeIn(page, keys);
    await makeReady(page, keys);
    const dutyPct = await pullUntilAccepted(page, keys);
    expect(Math.abs(trueMeanPeakKpa(dutyPct) - goal.targetKpa)).toBeLessThanOrEqual(goal.toleranceKpa);
    await keys.press(`Keep ${dutyPct} % for this preset`, 'Shift+Tab');
    await page.getByRole('link', { name: 'To the sign-off' }).waitFor();
    await keys.press('To the sign-off', 'Shift+Tab');
    await signOff(page, keys);
    await moveCard(page, keys);
    // Far fewer would mean that stops were not looked at.
    expect(keys.stopCount).toBeGreaterThan(100);
    await context.close();
  });

  test('Tab leads all around the visit and out of it again, and Escape out of a sheet', async () => {
    const context = await browser().newContext({ baseURL: origin, viewport: { width: 1180, height: 820 } });
    const page = await context.newPage();
    await page.goto('/sign-in');
    await heading(page, /./);
    const keys = new Keyboard(page);
    await keys.write('Email', 'tuner@pullbook.example');
    await keys.write('Password', 'practice-only');
    await page.keyboard.press('Enter');
    await page.waitForURL('**/board');
    await keys.press(/^PB 101/);
    await page.getByTestId('next-duty').waitFor();
    const met = await walkAround(page, keys);
    for (const name of [/^Recorded peak/, /^Record pull/, /^Find$/, /Board/, /^Void pull/]) {
      expect(
        met.some((one) => name.test(one)),
        `${String(name)} is met on the way`,
      ).toBe(true);
    }
    await keys.press(/^Void pull/);
    await page.getByRole('dialog').waitFor();
    const inside = await walkInside(page, keys);
    expect(inside).toContain('Void this pull');
    await page.keyboard.press('Escape');
    await page.getByRole('dialog').waitFor({ state: 'detached' });
    expect((await stopOf(page)).name).toMatch(/^Void pull/);
    await context.close();
  });
});

/** Names met from the top of the page until Tab has led out of it. */
async function walkAround(page: Page, keys: Keyboard): Promise<string[]> {
  const met: string[] = [];
  for (let stop = await stopOf(page); met.length < 200;) {
    stop = await keys.step('Tab', stop);
    met.push(stop.name);
    if (met.length > 1 && stop.name === met[0]) return met;
  }
  throw new Error(`Tab does not come around: ${met.join(' | ')}`);
}

/** Names met in an open sheet until the first comes again; none of the page behind it. */
async function walkInside(page: Page, keys: Keyboard): Promise<string[]> {
  const met: string[] = [];
  for (let stop = await stopOf(page); met.length < 60;) {
    stop = await keys.step('Tab', stop);
    const isInside = await page.evaluate(() => document.activeElement?.closest('dialog') !== null);
    if (stop.place >= 0) expect(isInside, `${stop.name} lies behind the sheet`).toBe(true);
    if (met.includes(stop.name)) return met;
    met.push(stop.name);
  }
  throw new Error(`Tab does not come around: ${met.join(' | ')}`);
}

async function takeIn(page: Page, keys: Keyboard): Promise<void> {
  await keys.press('Take in a car');
  await heading(page, 'Take in a car');
  await keys.write('Name', 'Severin Oake');
  await keys.write('Phone', '0100 555 0143');
  await keys.write('Plate', plate);
  await keys.write('Model', 'Estate, 2.0 turbo');
  await keys.write('Wishes', 'By keys alone.');
  await keys.write('Preset 1, name', 'everyday');
  await keys.write('Target boost wished, kPa', String(goal.targetKpa));
  await keys.press('Take in this car');
  await heading(page, `${plate} is in the book`);
  await keys.press('Open the visit');
}

async function makeReady(page: Page, keys: Keyboard): Promise<void> {
  await heading(page, 'Start a tuning session');
  await keys.write('Place', 'Cell 1');
  await keys.write('Driver', 'Ines Dorv');
  await keys.press('Start tuning session');
  await heading(page, 'Readiness check');
  await keys.tick(9);
  await keys.write('Over-boost cut set to, kPa', '142');
  await keys.press('Save readiness check');
  await heading(page, `Which controller is in ${plate}?`);
  await keys.reach('Controller');
  await page.keyboard.type('One slot');
  await keys.press('Use this controller');
  await heading(page, /Agree target and ceiling/);
  await keys.write('Tolerance, ± kPa', String(goal.toleranceKpa));
  await keys.write('Ceiling, kPa', String(goal.ceilingKpa));
  await page.keyboard.press('Enter');
  await heading(page, /^Pull 1:/);
}

/** Types the peaks of the test's own response until the advice accepts. @returns the duty */
async function pullUntilAccepted(page: Page, keys: Keyboard): Promise<number> {
  for (let n = 0; n < 25; n += 1) {
    const next = page.getByRole('heading', { name: new RegExp(`^Pull ${n + 1}:`) });
    const accepted = page.getByRole('heading', { name: /Accepted/ });
    await next.or(accepted).first().waitFor();
    const dutyPct = Number.parseFloat(await page.getByTestId('next-duty').innerText());
    if ((await accepted.count()) > 0) return dutyPct;
    await keys.write('Recorded peak, kPa', String(readingKpa(dutyPct, n)));
    await page.keyboard.press('Enter');
  }
  throw new Error('25 pulls without an accept');
}

async function signOff(page: Page, keys: Keyboard): Promise<void> {
  const seen = page.getByRole('region', { name: 'What you have seen yourself' });
  await seen.waitFor();
  await keys.tick(await seen.getByRole('checkbox').count());
  await keys.write('Your full name', 'Marta Kestrel');
  await page.keyboard.press('Enter');
  await heading(page, /Signed off and sealed/);
  await keys.press('Make report link');
  const address = page.getByLabel('Address of the report');
  await address.waitFor();
  expect(await address.inputValue()).toMatch(/\/r\/[\w-]{22,}$/);
}

/** Finds the card by its plate and moves it to the last lane, over the menu. */
async function moveCard(page: Page, keys: Keyboard): Promise<void> {
  await keys.press(/Board$/);
  await page.waitForURL('**/board');
  await heading(page, 'Board');
  await keys.write('Show on the board only', plate);
  await page.getByRole('button', { name: `Move ${plate}` }).waitFor();
  await keys.press(`Move ${plate}`);
  for (let n = 0; n < 8 && (await stopOf(page)).name.toLowerCase() !== 'collected'; n += 1) {
    await page.keyboard.press('ArrowDown');
  }
  expect((await stopOf(page)).name).toBe('Collected');
  await page.keyboard.press('Enter');
  await page.getByRole('button', { name: `Move ${plate}` }).waitFor({ state: 'detached' });
  const answer = await page.request.get('/api/v1/board?collected=true');
  const { cards } = (await answer.json()) as { cards: { plate: string; stage: string }[] };
  expect(cards.find((card) => card.plate === plate)?.stage).toBe('collected');
}

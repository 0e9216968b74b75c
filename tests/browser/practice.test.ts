import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { sharedBrowser } from './shared-browser.js';
import { sharedOrigin } from './shared-origin.js';
import { signIn } from './sign-in.js';
import { violationsOf } from './violations-of.js';

const origin = sharedOrigin();
const browser = sharedBrowser();

const heading = (page: Page, name: RegExp | string) => page.getByRole('heading', { name });

async function passCheck(page: Page): Promise<void> {
  await heading(page, 'Readiness check').waitFor();
  const go = page.getByRole('button', { name: 'To the first pull' });
  expect(await go.isDisabled()).toBe(true);
  for (const box of await page.getByRole('checkbox').all()) await box.check();
  await go.click();
  await heading(page, /^Pull 1: which duty/).waitFor();
}

const sign = (page: Page) => page.getByRole('complementary', { name: 'This is practice' });

async function drive(page: Page, dutyPct: number, number: number): Promise<number> {
  await page.getByLabel('Duty to drive, %', { exact: true }).fill(String(dutyPct));
  await page.getByRole('button', { name: `Drive pull ${number}`, exact: true }).click();
  await page.getByText(`Pull ${number} at ${dutyPct} %`).waitFor();
  return Number.parseFloat(await page.getByTestId('practice-peak').innerText());
}

test('a trainee keeps the book’s duty on a calm car and is told the truth, in a browser that writes nothing', async () => {
  const { context, page } = await signIn(browser(), origin, 'tuner@pullbook.example');
  await page.getByRole('link', { name: 'Practice', exact: true }).click();
  await heading(page, 'Practice').waitFor();
  expect(await violationsOf(page)).toEqual([]);
  await page.getByLabel('Number of the car').fill('0');
  await page.getByRole('button', { name: 'Take this car' }).click();
  await page.getByText('A whole number from 1 to 9999').waitFor();
  await page.getByLabel('Number of the car').fill('12');
  await page.getByRole('button', { name: 'Take this car' }).click();
  await page.waitForURL('**/practice?level=calm&car=12');
  const writes: string[] = [];
  page.on('request', (request) => {
    if (request.method() !== 'GET') writes.push(`${request.method()} ${request.url()}`);
  });
  await heading(page, 'Readiness check').waitFor();
  expect(await violationsOf(page)).toEqual([]);
  await passCheck(page);
  const shown = page.getByRole('button', { name: 'Show what the book advises' });
  const ends = heading(page, /The book would/);
  for (let number = 1; ; number += 1) {
    await shown.click();
    await heading(page, new RegExp(`^Pull ${number}: (set|repeat)`))
      .or(ends)
      .waitFor();
    if ((await ends.count()) > 0) break;
    expect(number, 'pulls without an end').toBeLessThan(20);
    const duty = Number.parseFloat(await page.getByTestId('next-duty').innerText());
    await drive(page, duty, number);
  }
  expect(await ends.innerText()).toMatch(/keep/);
  expect(await violationsOf(page)).toEqual([]);
  await page.getByRole('button', { name: /^Keep \d/ }).click();
  await heading(page, 'What the car was').waitFor();
  await page.getByText('truly makes the target').waitFor();
  await page.getByText('Nothing. That is how it is done.').waitFor();
  await page.getByRole('region', { name: 'Advice at each pull' }).waitFor();
  expect(await page.locator('svg[aria-label*="the true curve goes from"]').count()).toBe(1);
  expect(await violationsOf(page)).toEqual([]);
  expect(writes).toEqual([]);
  await context.close();
});

test('a step too far is minded before it is driven, and the ceiling ends the practice with what was risky', async () => {
  const { context, page } = await signIn(browser(), origin, 'tuner@pullbook.example', {
    viewport: { width: 360, height: 780 },
    colorScheme: 'dark',
  });
  await page.goto('/practice?level=lively&car=12');
  await passCheck(page);
  await drive(page, 10, 1);
  await page.getByLabel('Duty to drive, %', { exact: true }).fill('100');
  await page.getByText('100 % is more than the 10 points').waitFor();
  await page.getByRole('button', { name: 'Drive pull 2' }).click();
  await heading(page, /pull 2 passed the ceiling/).waitFor();
  await heading(page, 'What the car was').waitFor();
  await page.getByText('The ceiling was passed at pull 2').waitFor();
  await page.getByText('more than 10 points at pull 2').waitFor();
  expect(await sign(page).innerText()).toContain('not in the book');
  expect(await violationsOf(page)).toEqual([]);
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(360);
  await page.getByRole('button', { name: 'Same car again' }).click();
  await passCheck(page);
  await context.close();
});

test('the same address is the same car on another device, and keys alone drive it', async () => {
  const peaks: number[] = [];
  for (const email of ['tuner@pullbook.example', 'owner@pullbook.example']) {
    const { context, page } = await signIn(browser(), origin, email);
    await page.goto('/practice?level=steep&car=77');
    await heading(page, 'Readiness check').waitFor();
    await page.getByRole('checkbox').first().focus();
    for (let n = 0; n < 5; n += 1) {
      await page.keyboard.press('Space');
      await page.keyboard.press('Tab');
    }
    await page.keyboard.press('Enter');
    await heading(page, /^Pull 1: which duty/).waitFor();
    await page.getByLabel('Duty to drive, %', { exact: true }).focus();
    await page.keyboard.press('Control+a');
    await page.keyboard.type('15');
    await page.keyboard.press('Enter');
    await page.getByText('Pull 1 at 15 %').waitFor();
    peaks.push(Number.parseFloat(await page.getByTestId('practice-peak').innerText()));
    expect(await sign(page).isVisible()).toBe(true);
    await context.close();
  }
  expect(peaks[1]).toBe(peaks[0]);
});

test('practice opens and drives without network once the dashboard is kept on the device', async () => {
  const { context, page } = await signIn(browser(), origin, 'tuner@pullbook.example');
  await page.evaluate(async () => {
    await navigator.serviceWorker.ready;
  });
  await page.reload();
  await page.waitForFunction(() => navigator.serviceWorker.controller !== null);
  await context.setOffline(true);
  await page.goto('/practice?level=calm&car=3');
  await passCheck(page);
  expect(await drive(page, 10, 1)).toBeGreaterThan(0);
  await context.close();
});

test('a trainee whose practice car lost its boost looks it over, and finds what came loose', async () => {
  const { context, page } = await signIn(browser(), origin, 'tuner@pullbook.example');
  await page.goto('/practice?level=doubtful&car=1');
  await passCheck(page);
  // The duties that the book advises on this car; from the fifth pull on its solenoid is too late.
  for (const [index, dutyPct] of [7, 17, 27, 35, 40, 40].entries()) await drive(page, dutyPct, index + 1);
  await page.getByRole('button', { name: 'Show what the book advises' }).click();
  await heading(page, /The book would stop/).waitFor();
  await page.getByRole('button', { name: 'Look the car over' }).click();
  await page.getByText('the solenoid opened late').first().waitFor();
  await context.close();
});

import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { findCard } from './find-card.js';
import { sharedBrowser } from './shared-browser.js';
import { sharedOrigin } from './shared-origin.js';
import { signIn } from './sign-in.js';
import { violationsOf } from './violations-of.js';

const origin = sharedOrigin();
const browser = sharedBrowser();

const tour = (page: Page) => page.getByRole('complementary', { name: 'First tour' });
const says = (page: Page, text: string) => tour(page).getByText(text).waitFor();

async function startTour(page: Page, person: RegExp): Promise<void> {
  await page.getByRole('button', { name: person }).click();
  await page.getByRole('button', { name: 'Take the first tour' }).click();
  await tour(page).waitFor();
}

test('the tour leads a tuner through the demo job, sees what was done, covers nothing, and is over for good', async () => {
  const { context, page } = await signIn(browser(), origin, 'tuner@pullbook.example', {
    viewport: { width: 360, height: 780 },
  });
  expect(await tour(page).count()).toBe(0);
  await startTour(page, /^Menu of/);
  await says(page, '1 of 7, Board.');
  expect(await violationsOf(page)).toEqual([]);
  const { visitId } = await findCard(page, /^next pull/i);
  await page.goto(`/visits/${visitId}`);
  await says(page, '3 of 7, Next pull.');
  const [card, duty] = await Promise.all([
    tour(page).boundingBox(),
    page.getByTestId('next-duty').boundingBox(),
  ]);
  expect((card?.y ?? 0) + (card?.height ?? 0)).toBeLessThanOrEqual(duty?.y ?? 0);
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(360);
  expect(await violationsOf(page)).toEqual([]);
  await tour(page).getByRole('button', { name: 'Next step' }).press('Enter');
  await says(page, '4 of 7, Record.');
  await page.reload();
  await says(page, '4 of 7, Record.');
  await tour(page).getByRole('button', { name: 'Next step' }).click();
  await says(page, '5 of 7, Proof.');
  await tour(page).getByRole('button', { name: 'Next step' }).click();
  await says(page, '6 of 7, Sign-off.');
  await page.getByRole('link', { name: 'Sign-off', exact: true }).click();
  await page.waitForURL(`**/visits/${visitId}/sign-off`);
  await says(page, '7 of 7, Report.');
  await tour(page).getByRole('button', { name: 'Done' }).click();
  await tour(page).waitFor({ state: 'detached' });
  const me = await page.request.get('/api/v1/me');
  expect(((await me.json()) as { tourStep: number | null }).tourStep).toBeNull();
  await context.close();
});

test('the desk’s tour has no tuning in it, and can be ended at any step', async () => {
  const { context, page } = await signIn(browser(), origin, 'desk@pullbook.example');
  await startTour(page, /^Menu of/);
  await says(page, '1 of 3, Take in.');
  await tour(page).getByRole('link', { name: 'Go there' }).click();
  await says(page, '2 of 3, Job sheet.');
  await tour(page).getByRole('button', { name: 'End tour' }).click();
  await tour(page).waitFor({ state: 'detached' });
  await page.reload();
  await page.getByRole('heading', { name: 'Take in a car' }).waitFor();
  expect(await tour(page).count()).toBe(0);
  await context.close();
});

import type { Me } from '@pullbook/contracts';
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

const stepOnServer = async (page: Page): Promise<number | null> =>
  ((await (await page.request.get('/api/v1/me')).json()) as { tourStep: number | null }).tourStep;

/** Over, as the server has it and as the page shows once everything that it asked for has come. */
async function expectOver(page: Page): Promise<void> {
  await expect.poll(() => stepOnServer(page), { timeout: 30_000 }).toBeNull();
  await page.waitForLoadState('networkidle');
  expect(await tour(page).count()).toBe(0);
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
  await expectOver(page);
  await context.close();
});

/** What the device has written down of who is signed in: it shows that until the server answers. */
const keptOnDevice = (page: Page): Promise<Me | undefined> =>
  page.evaluate(
    (hash) =>
      new Promise<Me | undefined>((resolve, reject) => {
        const opening = indexedDB.open('pullbook');
        opening.onerror = () => reject(new Error('the database of the device does not open'));
        opening.onsuccess = () => {
          const reading = opening.result.transaction('answers').objectStore('answers').get(hash);
          reading.onsuccess = () => {
            opening.result.close();
            resolve((reading.result as { data: Me } | undefined)?.data);
          };
        };
      }),
    JSON.stringify(['me']),
  );

test('the tour begins although the server was just being asked who this is, and ends although a step is under way', async () => {
  const { context, page } = await signIn(browser(), origin, 'tuner@pullbook.example', {
    serviceWorkers: 'block',
  });
  await page.getByRole('button', { name: /^Menu of/ }).waitFor();
  // Not before the device has it that the tour is over does its menu offer another.
  await expect.poll(async () => (await keptOnDevice(page))?.tourStep).toBeNull();
  let release = (): void => undefined;
  const isStarted = new Promise<void>((resolve) => (release = resolve));
  await page.route('**/api/v1/me', async (route) => {
    if (route.request().method() !== 'GET') return route.continue();
    const answer = await route.fetch();
    await isStarted;
    // The page may have given up on it.
    return route.fulfill({ response: answer }).catch(() => undefined);
  });
  const asked = page.waitForRequest('**/api/v1/me');
  await page.reload();
  await asked;
  await startTour(page, /^Menu of/);
  release();
  await says(page, '1 of 7, Board.');
  await tour(page).getByRole('button', { name: 'Next step' }).click();
  await says(page, '2 of 7, Readiness.');
  await tour(page).getByRole('button', { name: 'End tour' }).click();
  await tour(page).waitFor({ state: 'detached' });
  await page.unroute('**/api/v1/me');
  await page.reload();
  await page.getByRole('button', { name: /^Menu of/ }).waitFor();
  await expectOver(page);
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
  await expectOver(page);
  await context.close();
});

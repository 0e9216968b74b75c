import { expect, test } from 'vitest';
import { sharedBrowser } from './shared-browser.js';
import { sharedOrigin } from './shared-origin.js';
import { signIn } from './sign-in.js';
import { timeChanges } from './time-changes.js';
import { visitOnTest } from './visit-on-test.js';

const browser = sharedBrowser();

/** Far above what it takes (`npm run bench:live`), for a machine that is busy with other tests. */
const longestMs = 15_000;

test('a second device sees every pull and every move on the board without being touched', async () => {
  const count = 5;
  const { pullsMs, movesMs } = await timeChanges(browser(), sharedOrigin(), { plate: 'LIV 110', count });
  expect(pullsMs).toHaveLength(count);
  expect(movesMs).toHaveLength(count);
  // Seen before it was pressed would mean that the wrong thing was looked at.
  expect(Math.min(...pullsMs, ...movesMs)).toBeGreaterThan(0);
  expect(Math.max(...pullsMs, ...movesMs)).toBeLessThan(longestMs);
});

test('a card that is moved on at once, before the board was read anew, goes on from its own last move', async () => {
  const { context, page } = await signIn(browser(), sharedOrigin(), 'owner@pullbook.example');
  const { visitId, plate } = await visitOnTest(context.request, 'LIV 111');
  await page.goto('/board');
  const statuses: number[] = [];
  page.on('response', (answer) => {
    if (answer.url().endsWith(`/visits/${visitId}/stage`)) statuses.push(answer.status());
  });
  const cardIn = (lane: string) =>
    page.locator(`section[aria-labelledby="lane-${lane}"] a[href="/visits/${visitId}"]`).waitFor();
  await cardIn('on-test');
  for (const [lane, name] of [
    ['arrived', 'Arrived'],
    ['on-test', 'On test'],
    ['arrived', 'Arrived'],
  ] as const) {
    await page.getByRole('button', { name: `Move ${plate}` }).click();
    await page.getByRole('button', { name, exact: true }).click();
    // It is shown there at once, long before the server has answered: a menu opened before that is one of the old card.
    await cardIn(lane);
  }
  await expect.poll(() => statuses, { timeout: longestMs }).toEqual([200, 200, 200]);
  await context.close();
});

import { expect, test } from 'vitest';
import { sharedBrowser } from './shared-browser.js';
import { sharedOrigin } from './shared-origin.js';
import { timeChanges } from './time-changes.js';

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

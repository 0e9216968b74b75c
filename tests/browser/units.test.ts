import { expect, test } from 'vitest';
import { findCard } from './find-card.js';
import { cardAt } from './screens/places.js';
import { tellMe } from './screens/tell-me.js';
import { sharedBrowser } from './shared-browser.js';
import { sharedOrigin } from './shared-origin.js';
import { signIn } from './sign-in.js';

const origin = sharedOrigin();
const browser = sharedBrowser();

/** A barometer is read in kPa whatever boost is read in. */
const isOfAir = (line: string): boolean => /barometer|kPa absolute/i.test(line);

test('who reads boost in psi is not told of kPa on the pages of a visit and its car', async () => {
  const { context, page } = await signIn(browser(), origin, 'owner@pullbook.example');
  await tellMe(page, { units: { pressure: 'psi', temperature: 'F' } });
  const onTest = await findCard(page, /^next pull/i);
  const closed = await cardAt(page, 'collected');
  const toSign = await cardAt(page, 'to-sign-off');
  const places = [onTest, closed, toSign].flatMap(({ visitId, carId }) => [
    `/visits/${visitId}`,
    `/visits/${visitId}/about`,
    `/visits/${visitId}/sign-off`,
    `/cars/${carId}`,
    `/cars/${carId}/outlook`,
  ]);
  const told: string[] = [];
  let inPsi = 0;
  for (const place of [...new Set(places), '/board']) {
    await page.goto(place);
    await page.waitForLoadState('networkidle');
    await page.locator('main h2, main h3').first().waitFor();
    const lines = (await page.locator('main').innerText()).split('\n');
    inPsi += lines.filter((line) => line.includes('psi')).length;
    const wrong = lines.filter((line) => line.includes('kPa') && !isOfAir(line));
    told.push(...wrong.map((line) => `${place}: ${line}`));
  }
  expect(told).toEqual([]);
  expect(inPsi, 'lines in psi').toBeGreaterThan(20);
  await context.close();
});

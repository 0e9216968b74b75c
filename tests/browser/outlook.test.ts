import { expect, test } from 'vitest';
import { findCard } from './find-card.js';
import { sharedBrowser } from './shared-browser.js';
import { sharedOrigin } from './shared-origin.js';
import { signIn } from './sign-in.js';
import { violationsOf } from './violations-of.js';

const origin = sharedOrigin();
const browser = sharedBrowser();

test('a drift alarm leads from the board to its charts, and from there to the visit of each pull', async () => {
  const { context, page } = await signIn(browser(), origin, 'owner@pullbook.example');
  const card = await findCard(page, /^drift alarm/);
  await page.goto('/board');
  const alarm = page.getByRole('link', { name: /drift .* % lower: .* outside its limits/ }).first();
  await alarm.click();
  await page.waitForURL(`**/cars/${card.carId}/outlook?preset=*`);
  await page.getByRole('heading', { name: 'Drift', exact: true }).waitFor();
  const verdict = await page.getByRole('alert').filter({ hasText: 'Drift alarm' }).innerText();
  expect(verdict).toMatch(/% lower since visit \d+: .*(Shewhart|EWMA) chart\), pull \d+ of visit \d+\./);
  await page.getByRole('img', { name: /at reference conditions over visits: .* alarm at pull/ }).waitFor();
  expect(await page.getByRole('img', { name: /^Forecast of a pull's peak/ }).count()).toBe(3);
  expect(await page.getByText('A forecast is no advice to drive.').count()).toBe(1);
  expect(await violationsOf(page)).toEqual([]);
  const pulls = page.getByRole('region', { name: 'Pulls' });
  await pulls.getByRole('link').first().click();
  await page.waitForURL(`**/visits/${card.visitId}**`);
  await context.close();
});

test('on a phone the page is no wider than its screen, and the other preset is one press away', async () => {
  const { context, page } = await signIn(browser(), origin, 'desk@pullbook.example');
  const { carId } = await findCard(page, /^drift alarm/);
  await page.setViewportSize({ width: 360, height: 780 });
  await page.goto(`/cars/${carId}/outlook`);
  const other = page.getByRole('navigation', { name: 'Presets' }).getByRole('link').nth(1);
  const box = await other.boundingBox();
  expect(box?.height).toBeGreaterThanOrEqual(48);
  await other.click();
  await page.waitForURL('**/outlook?preset=*');
  await page.getByRole('heading', { name: 'Forecast', exact: true }).waitFor();
  const extra = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
  expect(extra).toBeLessThanOrEqual(0);
  expect(await violationsOf(page)).toEqual([]);
  await context.close();
});

import { expect, test } from 'vitest';
import { findCard } from './find-card.js';
import { tellMe } from './screens/tell-me.js';
import { sharedBrowser } from './shared-browser.js';
import { sharedOrigin } from './shared-origin.js';
import { signIn } from './sign-in.js';

const origin = sharedOrigin();
const browser = sharedBrowser();

test('who types a target that another preset of the car has, is told of it in psi, and not of any other', async () => {
  const { context, page } = await signIn(browser(), origin, 'owner@pullbook.example');
  await tellMe(page, { units: { pressure: 'psi', temperature: 'F' } });
  const { carId } = await findCard(page, /^next pull/i);
  const answer = await page.request.get(`/api/v1/cars/${carId}/presets`);
  const { items } = (await answer.json()) as { items: { name: string; targetKpa: number | null }[] };
  const other = items.find(({ targetKpa }) => targetKpa !== null);
  if (!other?.targetKpa) throw new Error('the car has a preset with a target');
  await page.goto(`/cars/${carId}`);
  await page.getByRole('button', { name: 'Add preset' }).first().click();
  const form = page.getByRole('dialog');
  // 1 psi = 6.894757 kPa: NIST SP 811, appendix B.8.
  await form.getByLabel('Target, psi').fill((other.targetKpa / 6.894757).toFixed(1));
  const hint = form.getByRole('status').filter({ hasText: `${other.name} has much the same target` });
  await hint.waitFor();
  expect(await hint.innerText()).toMatch(
    /target, [\d.]+\spsi ± [\d.]+: a car that makes one makes the other/,
  );
  await form.getByLabel('Target, psi').fill('1');
  await hint.waitFor({ state: 'detached' });
  await context.close();
});

test('a new preset takes a free slot however late the presets come, and says which one it would replace', async () => {
  const { context, page } = await signIn(browser(), origin, 'owner@pullbook.example');
  const { carId } = await findCard(page, /^next pull/i);
  const answer = await page.request.get(`/api/v1/cars/${carId}/presets`);
  const { items } = (await answer.json()) as { items: { name: string; slot: number; state: string }[] };
  const standing = items.filter(({ state }) => state !== 'replaced');
  const [holder] = standing;
  if (holder === undefined) throw new Error('the car has a preset');
  await page.route('**/cars/*/presets?*', async (route) => {
    await new Promise((resolve) => setTimeout(resolve, 2000));
    await route.continue();
  });
  await page.goto(`/cars/${carId}`);
  await page.getByRole('heading', { name: 'Presets' }).waitFor();
  await page.getByRole('button', { name: 'Add preset' }).first().click();
  const slot = page.getByRole('dialog').getByLabel('Slot');
  expect(standing.map((one) => String(one.slot))).not.toContain(await slot.inputValue());
  await slot.fill(String(holder.slot));
  await page.getByText(`Holds ${holder.name}, which this one would replace.`).waitFor();
  await context.close();
});

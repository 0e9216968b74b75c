import type { BrowserContext, Page } from 'playwright-core';
import { changeRecord } from '../change-record.js';
import { limitTurbo } from '../limit-turbo.js';
import { visitOnTest, type VisitOnTest } from '../visit-on-test.js';
import type { Screen } from './screen.js';

const visit = {
  route: '/visits/[id]',
  who: 'owner',
  isForGloves: true,
  keepsShell: true,
} as const;

/** Writes down two pulls without network; the first two peaks of the tests' own response. */
async function writeDownTwo(page: Page, context: BrowserContext, plate: string): Promise<VisitOnTest> {
  const own = await visitOnTest(page.request, plate);
  await page.goto(`/visits/${own.visitId}`);
  await page.getByTestId('next-duty').waitFor();
  // What is opened without network, sheets among it, comes from what the device keeps.
  await page.waitForFunction(() => navigator.serviceWorker.controller !== null);
  await context.setOffline(true);
  for (const [n, peakKpa] of [62, 65].entries()) {
    await page.getByLabel('Recorded peak, kPa').fill(String(peakKpa));
    await page.getByRole('button', { name: /^Record pull/ }).click();
    await page
      .getByText(`Not yet sent: ${n + 1}`)
      .first()
      .waitFor();
  }
  return own;
}

/** Closes what the screen has to say, then opens the list. */
async function openOutbox(page: Page): Promise<void> {
  const close = page.getByRole('button', { name: 'Close notice' });
  while ((await close.count()) > 0) await close.first().click();
  await page
    .getByRole('button', { name: /^Not yet sent/ })
    .first()
    .click();
}

/** What a device shows while it holds what the server does not have, and what it asks when the server says no. */
export const outboxScreens: readonly Screen[] = [
  {
    ...visit,
    name: 'visit-unsent',
    open: async (page, context) => {
      await writeDownTwo(page, context, 'SCR 201');
      // The line of the proof part: what it does not count yet.
      await page.getByText('2 pulls not sent from this device').waitFor();
      await page.evaluate(() => window.scrollTo(0, 0));
    },
  },
  {
    ...visit,
    name: 'outbox-waiting',
    open: async (page, context) => {
      await writeDownTwo(page, context, 'SCR 202');
      await openOutbox(page);
      await page.getByText('Waits for the network.').first().waitFor();
    },
  },
  {
    ...visit,
    name: 'outbox-refused',
    open: async (page, context) => {
      const own = await writeDownTwo(page, context, 'SCR 203');
      await limitTurbo(page.request, own, 135);
      await context.setOffline(false);
      await page.getByRole('button', { name: /some not taken in/ }).waitFor();
      await openOutbox(page);
      await page.getByRole('button', { name: 'Drop it …' }).click();
    },
  },
  {
    ...visit,
    name: 'outbox-goal-changed',
    open: async (page, context) => {
      const own = await writeDownTwo(page, context, 'SCR 204');
      await changeRecord(page.request, `/presets/${own.presetId}`, {
        targetKpa: 110,
        ceilingKpa: 122,
        reason: 'The customer wants it gentler',
      });
      await context.setOffline(false);
      await page.getByRole('button', { name: /some not taken in/ }).waitFor();
      await openOutbox(page);
      await page.getByRole('button', { name: /for the goal of now/ }).waitFor();
    },
  },
];

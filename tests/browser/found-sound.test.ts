import type { NextPull, Pull } from '@pullbook/contracts';
import type { BrowserContext, Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { pullOnRecord } from './screens/drive.js';
import { sharedBrowser } from './shared-browser.js';
import { sharedOrigin } from './shared-origin.js';
import { signIn } from './sign-in.js';
import { visitOnTest, type VisitOnTest } from './visit-on-test.js';

const origin = sharedOrigin();
const browser = sharedBrowser();

interface Tuner {
  readonly context: BrowserContext;
  readonly page: Page;
  readonly visit: VisitOnTest;
}

/** A tuner whose third pull has just soared: far above what two low ones led to expect, past the ceiling. */
async function tunerStopped(plate: string): Promise<Tuner> {
  const { context, page } = await signIn(browser(), origin, 'owner@pullbook.example');
  const visit = await visitOnTest(context.request, plate);
  for (const [dutyPct, peakKpa] of [
    [10, 62],
    [20, 68],
    [25, 150],
  ] as const)
    await pullOnRecord(page, visit, { dutyPct, peakKpa });
  await page.goto(`/visits/${visit.visitId}`);
  await page.getByRole('heading', { name: 'Stop' }).waitFor();
  return { context, page, visit };
}

async function sayFoundSound(page: Page, note: string): Promise<void> {
  await page.getByRole('button', { name: 'Nothing wrong found …' }).click();
  const sheet = page.getByRole('dialog', { name: 'Looked over after pull 3' });
  await sheet.getByText('A car with a fault can over-boost at once').waitFor();
  await sheet.getByLabel('What did you look at?').fill(note);
  await sheet.getByRole('button', { name: 'Looked over: the car is sound' }).click();
  await sheet.waitFor({ state: 'detached' });
}

/** The duty that the screen advises, once it does. */
async function advisedDuty(page: Page): Promise<number> {
  await page.getByRole('heading', { name: /^Pull 4:/ }).waitFor();
  return Number.parseFloat(await page.getByTestId('next-duty').innerText());
}

async function onRecord({ context, visit }: Tuner): Promise<{ next: NextPull; pulls: Pull[] }> {
  const path = `/api/v1/tuning-sessions/${visit.sessionId}`;
  const next = await context.request.get(`${path}/next-pull?presetId=${visit.presetId}`);
  const pulls = await context.request.get(`${path}/pulls?presetId=${visit.presetId}`);
  return {
    next: (await next.json()) as NextPull,
    pulls: ((await pulls.json()) as { items: Pull[] }).items.sort((a, b) => a.number - b.number),
  };
}

describe('a stop that may be a fault', () => {
  test('gives way once the car was looked over: the advice goes on, the pull stands and bears the mark', async () => {
    const tuner = await tunerStopped('SND 100');
    const { context, page } = tuner;
    expect((await onRecord(tuner)).next.advice).toMatchObject({ action: 'stop', duty: null });
    await sayFoundSound(page, 'hoses on, gate free');
    const duty = await advisedDuty(page);
    expect(duty).toBeLessThan(25);
    await page.getByText('The car was looked over').waitFor();
    const row = page.getByRole('row').filter({ hasText: 'looked over, sound' });
    expect(await row.count()).toBe(1);
    expect(await row.innerText()).toMatch(/^3\b[\s\S]*usable[\s\S]*looked over, sound: hoses on, gate free/);
    await page.getByText('All sent').first().waitFor();
    const { next, pulls } = await onRecord(tuner);
    expect(next).toMatchObject({ foundSoundAfterPull: 3, restsOnPulls: [1, 2, 3], advice: { duty } });
    expect(pulls.map(({ foundSoundNote }) => foundSoundNote)).toEqual([null, null, 'hoses on, gate free']);
    expect(pulls.every(({ voidedAt }) => voidedAt === null)).toBe(true);
    await context.close();
  });

  test('gives way without network too, with the duty that the server advises once it is sent', async () => {
    const tuner = await tunerStopped('SND 200');
    const { context, page } = tuner;
    await page.waitForFunction(() => navigator.serviceWorker.controller !== null);
    await context.setOffline(true);
    await sayFoundSound(page, '');
    const duty = await advisedDuty(page);
    await page.getByText('Not yet sent: 1').first().waitFor();
    await page.getByText('the look at the car not sent from this device').waitFor();
    expect((await onRecord(tuner)).next.advice?.action).toBe('stop');
    await context.setOffline(false);
    await page.getByText('All sent').first().waitFor();
    expect((await onRecord(tuner)).next).toMatchObject({ foundSoundAfterPull: 3, advice: { duty } });
    expect(await advisedDuty(page)).toBe(duty);
    await context.close();
  });

  test('stays where nobody says so: the sheet is left by Escape', async () => {
    const tuner = await tunerStopped('SND 300');
    const { context, page } = tuner;
    await page.getByRole('button', { name: 'Nothing wrong found …' }).click();
    await page.getByRole('dialog').waitFor();
    await page.keyboard.press('Escape');
    await page.getByRole('dialog').waitFor({ state: 'detached' });
    await page.getByRole('heading', { name: 'Stop' }).waitFor();
    expect((await onRecord(tuner)).pulls.every(({ foundSoundAt }) => foundSoundAt === null)).toBe(true);
    await context.close();
  });
});

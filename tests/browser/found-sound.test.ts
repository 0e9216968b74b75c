import type { NextGateHold, NextPull, Pull } from '@pullbook/contracts';
import type { BrowserContext, Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { stopOf } from './keyboard.js';
import { pullOnRecord } from './screens/drive.js';
import { stoppedAtHold } from './screens/gate-hold-screens.js';
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

/** By the keyboard: only then does a heading show that it has the focus. */
async function sayFoundSound(page: Page, note: string, number = 3): Promise<void> {
  await page.getByRole('button', { name: 'Nothing wrong found …' }).press('Enter');
  const sheet = page.getByRole('dialog', { name: `Looked over after pull ${number}` });
  await sheet.getByText('A car with a fault can over-boost at once').waitFor();
  await sheet.getByLabel('What did you look at?').fill(note);
  await sheet.getByRole('button', { name: 'Looked over: the car is sound' }).press('Enter');
  await sheet.waitFor({ state: 'detached' });
}

/** The duty that the screen advises, once it does. */
async function advisedDuty(page: Page): Promise<number> {
  await page.getByRole('heading', { name: /^Pull 4:/ }).waitFor();
  return Number.parseFloat(await page.getByTestId('next-duty').innerText());
}

/** The keyboard goes on from the heading of what comes next. */
async function expectFocusOn(page: Page, heading: RegExp): Promise<void> {
  await page.waitForFunction(() => document.activeElement?.tagName === 'H2');
  const stop = await stopOf(page);
  expect(stop.name).toMatch(heading);
  expect(stop).toMatchObject({ isMarked: true, isInWindow: true });
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
    await expectFocusOn(page, /^Pull 4:/);
    await page.getByText('The car was looked over').waitFor();
    const row = page.getByRole('row').filter({ hasText: 'looked over, sound' });
    expect(await row.count()).toBe(1);
    expect(await row.innerText()).toMatch(/^3\b[\s\S]*usable[\s\S]*looked over, sound: hoses on, gate free/);
    await page.getByText('All sent').first().waitFor();
    await expectFocusOn(page, /^Pull 4:/);
    const { next, pulls } = await onRecord(tuner);
    expect(next).toMatchObject({ foundSoundAfterPull: 3, restsOnPulls: [1, 2, 3], advice: { duty } });
    expect(pulls.map(({ foundSoundNote }) => foundSoundNote)).toEqual([null, null, 'hoses on, gate free']);
    expect(pulls.every(({ voidedAt }) => voidedAt === null)).toBe(true);
    await page.goto(`/visits/${tuner.visit.visitId}/sign-off`);
    await page.getByText('after pull 3: hoses on, gate free (').waitFor();
    await context.close();
  });

  test('gives way without network too, with the duty that the server advises once it is sent', async () => {
    const tuner = await tunerStopped('SND 200');
    const { context, page } = tuner;
    await page.waitForFunction(() => navigator.serviceWorker.controller !== null);
    await context.setOffline(true);
    await sayFoundSound(page, '');
    const duty = await advisedDuty(page);
    await expectFocusOn(page, /^Pull 4:/);
    await page.getByText('Not yet sent: 1').first().waitFor();
    await page.getByText('the look at the car not sent from this device').waitFor();
    expect((await onRecord(tuner)).next.advice?.action).toBe('stop');
    await context.setOffline(false);
    await page.getByText('All sent').first().waitFor();
    expect((await onRecord(tuner)).next).toMatchObject({ foundSoundAfterPull: 3, advice: { duty } });
    expect(await advisedDuty(page)).toBe(duty);
    await expectFocusOn(page, /^Pull 4:/);
    await context.close();
  });

  test('stays where nobody says so: the sheet is left by Escape', async () => {
    const tuner = await tunerStopped('SND 300');
    const { context, page } = tuner;
    await page.getByRole('button', { name: 'Nothing wrong found …' }).press('Enter');
    await page.getByRole('dialog').waitFor();
    await page.keyboard.press('Escape');
    await page.getByRole('dialog').waitFor({ state: 'detached' });
    await page.getByRole('heading', { name: 'Stop' }).waitFor();
    expect(await stopOf(page)).toMatchObject({ name: 'Nothing wrong found …', isMarked: true });
    expect((await onRecord(tuner)).pulls.every(({ foundSoundAt }) => foundSoundAt === null)).toBe(true);
    await context.close();
  });

  test('gives way in the search for the gate hold too, once the look at the car is sent', async () => {
    const { context, page } = await signIn(browser(), origin, 'owner@pullbook.example');
    const visit = await stoppedAtHold(page, 'SND 400');
    const { pulls } = await onRecord({ context, page, visit });
    const last = pulls.at(-1)?.number ?? NaN;
    await page.waitForFunction(() => navigator.serviceWorker.controller !== null);
    await context.setOffline(true);
    await sayFoundSound(page, 'gate free', last);
    await page.getByText('Gate hold waits.').waitFor();
    await page.getByRole('row').filter({ hasText: 'looked over, sound: gate free' }).waitFor();
    await context.setOffline(false);
    const heading = page.getByRole('heading', { name: /set gate hold to|Gate hold found/ });
    await heading.waitFor();
    await expectFocusOn(page, /set gate hold to|Gate hold found/);
    await page.getByText('no fault is read into the first 5 pulls of this search').waitFor();
    const told = await context.request.get(
      `/api/v1/tuning-sessions/${visit.sessionId}/next-gate-hold?presetId=${visit.presetId}`,
    );
    const { advice, foundSoundAfterPull } = (await told.json()) as NextGateHold;
    expect(foundSoundAfterPull).toBe(last);
    expect(advice?.holdPct).toBeLessThan(35);
    await context.close();
  });
});

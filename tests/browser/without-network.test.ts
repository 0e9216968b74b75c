import type { NextPull, Pull } from '@pullbook/contracts';
import { nextPullOf } from '@pullbook/next-pull';
import type { APIRequestContext, BrowserContext, Page, Route } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { logOfPull, readingKpa } from './known-response.js';
import { limitTurbo } from './limit-turbo.js';
import { sharedBrowser } from './shared-browser.js';
import { sharedOrigin } from './shared-origin.js';
import { signIn } from './sign-in.js';
import { visitOnTest, type VisitOnTest } from './visit-on-test.js';

const origin = sharedOrigin();
const browser = sharedBrowser();

async function tunerAt(plate: string): Promise<{ context: BrowserContext; page: Page; visit: VisitOnTest }> {
  const { context, page } = await signIn(browser(), origin, 'owner@pullbook.example');
  const visit = await visitOnTest(context.request, plate);
  await page.goto(`/visits/${visit.visitId}`);
  await page.getByTestId('next-duty').waitFor();
  await page.waitForFunction(() => navigator.serviceWorker.controller !== null);
  return { context, page, visit };
}

const unsent = (page: Page, count: number) => page.getByText(`Not yet sent: ${count}`).first();

async function recordPull(page: Page, dutyPct: number, peakKpa: number): Promise<void> {
  await page.getByLabel('Duty driven, %', { exact: true }).fill(String(dutyPct));
  const peak = page.getByLabel('Recorded peak, kPa');
  await peak.fill(String(peakKpa));
  await page.getByRole('button', { name: /^Record pull/ }).click();
  const isEmpty = (element: HTMLElement | SVGElement | null) => (element as HTMLInputElement).value === '';
  await page.waitForFunction(isEmpty, await peak.elementHandle()).catch(async (cause: unknown) => {
    throw new Error(`not written down: ${await page.locator('main').innerText()}`, { cause });
  });
}

async function dropLog(page: Page, name: string, peakKpa: number): Promise<void> {
  const buffer = Buffer.from(logOfPull(peakKpa));
  await page.getByLabel('Log file').setInputFiles({ name, mimeType: 'text/csv', buffer });
  await page.getByText('Kept on this device.').waitFor();
  await page.getByRole('button', { name: 'Go on meanwhile' }).click();
}

async function pullsOnRecord(api: APIRequestContext, { sessionId, presetId }: VisitOnTest): Promise<Pull[]> {
  const answer = await api.get(`/api/v1/tuning-sessions/${sessionId}/pulls?presetId=${presetId}`);
  return ((await answer.json()) as { items: Pull[] }).items.sort((a, b) => a.number - b.number);
}

async function askedNext(api: APIRequestContext, { sessionId, presetId }: VisitOnTest): Promise<NextPull> {
  const answer = await api.get(`/api/v1/tuning-sessions/${sessionId}/next-pull?presetId=${presetId}`);
  return (await answer.json()) as NextPull;
}

/** Pulls that are written down without network: two hours of them. */
const PULLS = 100;

/** Duty for the n-th pull (from 0): up in steps of 5 to 50 %, then about it. */
const dutyOf = (n: number): number => Math.min(50, 5 + 5 * n) - (n > 9 ? n % 3 : 0);

describe('without network', () => {
  test('two hours of pulls and logs arrive whole, once and in order, whatever happens on the way', async () => {
    const { context, page, visit } = await tunerAt('OFF 100');
    const faults = await faultyServer(context);
    const sent: { dutyPct: number; peakKpa: number }[] = [];
    const drive = async (on: Page, count: number) => {
      for (let n = 0; n < count; n += 1) {
        const dutyPct = dutyOf(sent.length);
        const peakKpa = readingKpa(dutyPct, sent.length);
        await recordPull(on, dutyPct, peakKpa);
        sent.push({ dutyPct, peakKpa });
      }
    };
    const third = Math.floor(PULLS / 3);
    await context.setOffline(true);
    await drive(page, third);
    await dropLog(page, 'first.csv', 101);
    await dropLog(page, 'second.csv', 102);
    await unsent(page, third + 2).waitFor();

    await page.reload();
    await unsent(page, third + 2).waitFor();
    await page.getByRole('button', { name: /no line to the server, as of/ }).waitFor();
    await drive(page, third);
    await dropLog(page, 'third.csv', 103);

    // The tab dies as it does when a tablet runs out of memory or power: nothing is told, nothing is tidied up.
    const killed = context.newCDPSession(page).then((session) => session.send('Page.crash'));
    await Promise.race([killed.catch(() => undefined), page.waitForEvent('crash')]);
    await page.close();
    const fresh = await context.newPage();
    await fresh.goto(`/visits/${visit.visitId}`);
    await unsent(fresh, 2 * third + 3).waitFor();
    await drive(fresh, PULLS - 2 * third);
    await dropLog(fresh, 'fourth.csv', 104);
    await dropLog(fresh, 'fifth.csv', 105);
    await unsent(fresh, PULLS + 5).waitFor();

    await context.setOffline(false);
    await fresh.getByText('All sent').first().waitFor({ timeout: 240_000 });
    expect(faults).toEqual({ lostAnswers: 2, serverErrors: 1 });

    const stored = await pullsOnRecord(context.request, visit);
    expect(stored.map(({ dutyPct, peakKpa }) => ({ dutyPct, peakKpa }))).toEqual(sent);
    expect(stored.map((pull) => pull.number)).toEqual(sent.map((_, n) => n + 1));
    const times = stored.map((pull) => Date.parse(pull.recordedAt));
    expect(times).toEqual([...times].sort((a, b) => a - b));
    const logs = await context.request.get(`/api/v1/tuning-sessions/${visit.sessionId}/logs`);
    const names = ((await logs.json()) as { items: { fileName: string }[] }).items.map((one) => one.fileName);
    expect(names.sort()).toEqual(['fifth.csv', 'first.csv', 'fourth.csv', 'second.csv', 'third.csv']);
    await context.close();
  });

  test('the advice without network is the server’s, and there is none without readiness', async () => {
    const { context, page, visit } = await tunerAt('OFF 200');
    const duty = () => page.getByTestId('next-duty').innerText();
    await context.setOffline(true);
    for (const n of [0, 1, 2]) {
      await page.getByRole('heading', { name: new RegExp(`^Pull ${n + 1}:`) }).waitFor();
      const advised = Number.parseFloat(await duty());
      await recordPull(page, advised, readingKpa(advised, n));
    }
    await page.getByRole('heading', { name: /^Pull 4:/ }).waitFor();
    const shown = await page.getByRole('region', { name: /^Pull 4:/ }).innerText();
    const stillLocal = await askedNext(context.request, visit);
    expect(stillLocal.restsOnPulls).toEqual([]);
    const here = await page.evaluate(
      (question) =>
        new Promise<string>((resolve) => {
          const worker = new Worker('/advice-worker.js');
          worker.onmessage = ({ data }) => resolve(JSON.stringify((data as { answer: unknown }).answer));
          worker.postMessage(question);
        }),
      { id: 1, basis: stillLocal.basis, pulls: await shownPulls(page) },
    );
    await context.setOffline(false);
    await page.getByText('All sent').first().waitFor();
    const told = await askedNext(context.request, visit);
    expect(told.restsOnPulls).toEqual([1, 2, 3]);
    expectSame(JSON.parse(here), told);
    expect(await page.getByRole('region', { name: /^Pull 4:/ }).innerText()).toBe(shown);

    const unready = nextPullOf({ ...told.basis, missing: ['pass the readiness check'] }, []);
    expect(unready.advice).toBeNull();
    await context.close();
  });

  test('a pull voided without network is void for the advice at once, and in the book once it is sent', async () => {
    const { context, page, visit } = await tunerAt('OFF 300');
    await context.setOffline(true);
    await recordPull(page, 10, 62);
    await page.getByRole('heading', { name: /^Pull 2:/ }).waitFor();
    await page.getByRole('button', { name: 'Void pull 1' }).click();
    await page.getByRole('button', { name: 'typed wrong' }).click();
    await page.getByRole('button', { name: 'Void this pull' }).click();
    await unsent(page, 2).waitFor();
    await page.getByText('void: typed wrong').waitFor();
    await page.getByText('Up 10 from 10 %').waitFor({ state: 'detached' });
    await context.setOffline(false);
    await page.getByText('All sent').first().waitFor();
    const [pull] = await pullsOnRecord(context.request, visit);
    expect(pull).toMatchObject({ number: 1, peakKpa: 62, voidReason: 'typed wrong' });
    await context.close();
  });

  test('of several tabs one sends, and every tab sees the same', async () => {
    const { context, page, visit } = await tunerAt('OFF 400');
    const second = await context.newPage();
    await second.goto(`/visits/${visit.visitId}`);
    await second.getByTestId('next-duty').waitFor();
    await context.setOffline(true);
    for (const n of [1, 2, 3, 4, 5, 6]) await recordPull(n % 2 === 0 ? page : second, 5 * n, 58 + n);
    await Promise.all([unsent(page, 6).waitFor(), unsent(second, 6).waitFor()]);
    const posts: string[] = [];
    context.on('request', (request) => {
      if (request.method() === 'POST' && request.url().endsWith('/pulls')) {
        posts.push(request.headers()['idempotency-key'] ?? '');
      }
    });
    await context.setOffline(false);
    await Promise.all([page, second].map((tab) => tab.getByText('All sent').first().waitFor()));
    expect(new Set(posts).size).toBe(6);
    expect(posts).toHaveLength(6);
    const stored = await pullsOnRecord(context.request, visit);
    expect(stored.map((pull) => pull.peakKpa)).toEqual([59, 60, 61, 62, 63, 64]);
    await context.close();
  });

  test('what the server does not take stays, says why and what to do, and goes out once that is put right', async () => {
    const { context, page, visit } = await tunerAt('OFF 500');
    await context.setOffline(true);
    await recordPull(page, 10, 62);
    await recordPull(page, 15, 65);
    await limitTurbo(context.request, visit, 135);
    await context.setOffline(false);
    await page.getByRole('button', { name: /Not yet sent: 2 some not taken in/ }).click();
    const dialog = page.getByRole('dialog');
    await dialog.getByText('Not taken in', { exact: true }).waitFor();
    await dialog.getByText(/Limits or ceilings were changed meanwhile/).waitFor();
    await dialog.getByText('Waits until the one above that was not taken in is decided.').waitFor();
    expect(await pullsOnRecord(context.request, visit)).toEqual([]);
    await limitTurbo(context.request, visit, null);
    await dialog.getByRole('button', { name: 'Send again' }).click();
    await dialog.getByText(/Everything that was written down here/).waitFor();
    const stored = await pullsOnRecord(context.request, visit);
    expect(stored.map((pull) => pull.peakKpa)).toEqual([62, 65]);
    await context.close();
  });

  test('a sign-in that ran out meanwhile loses nothing: sending goes on after signing in', async () => {
    const { context, page, visit } = await tunerAt('OFF 600');
    await context.setOffline(true);
    await recordPull(page, 10, 62);
    await unsent(page, 1).waitFor();
    await context.clearCookies();
    await context.setOffline(false);
    await page.waitForURL('**/sign-in**');
    await page.getByText(/One entry was written down on this device/).waitFor();
    await page.getByLabel('Email').fill('owner@pullbook.example');
    await page.getByLabel('Password').fill('practice-only');
    await page.getByRole('button', { name: 'Sign in', exact: true }).click();
    await page.waitForURL(`**/visits/${visit.visitId}`);
    await page.getByText('All sent').first().waitFor();
    expect(await pullsOnRecord(context.request, visit)).toHaveLength(1);
    await context.close();
  });
});

/** Figures of the pulls in the list, as the advice is asked with them. */
async function shownPulls(page: Page): Promise<object[]> {
  const rows = await page.locator('main table').first().locator('tbody tr').all();
  const pulls = await Promise.all(
    rows.map(async (row) => {
      const [number, dutyPct, , peakKpa] = await row.locator('td').allInnerTexts();
      return { number: Number(number), dutyPct: Number(dutyPct), peakKpa: Number(peakKpa), usable: true };
    }),
  );
  return pulls.reverse();
}

interface Figures {
  readonly words: unknown;
  readonly figures: readonly number[];
}

/** An answer, its figures apart from the rest. */
function takenApart(answer: unknown): Figures {
  const figures: number[] = [];
  const words: unknown = JSON.parse(
    JSON.stringify(answer, (_key, one: unknown) => {
      if (typeof one !== 'number') return one;
      figures.push(one);
      return 'figure';
    }),
  );
  return { words, figures };
}

/** The same words and figures; engines of another year may round an exponential otherwise, in its last bits. */
function expectSame(here: unknown, there: unknown): void {
  const [a, b] = [takenApart(here), takenApart(there)];
  expect(a.words).toEqual(b.words);
  expect(b.figures).toHaveLength(a.figures.length);
  expect(a.figures.length).toBeGreaterThan(50);
  const apart = a.figures.map(
    (figure, n) => Math.abs(figure - (b.figures[n] ?? NaN)) / (Math.abs(figure) || 1),
  );
  expect(Math.max(...apart)).toBeLessThan(1e-9);
}

/** Loses the answers to two pulls after the server has stored them, and has the server fail once before it does. */
async function faultyServer(context: BrowserContext): Promise<{ lostAnswers: number; serverErrors: number }> {
  const done = { lostAnswers: 0, serverErrors: 0 };
  let count = 0;
  await context.route('**/api/v1/tuning-sessions/*/pulls', async (route: Route) => {
    if (route.request().method() !== 'POST') return route.continue();
    count += 1;
    if (count === 5 || count === 40) {
      await route.fetch();
      done.lostAnswers += 1;
      return route.abort('connectionreset');
    }
    if (count === 20) {
      done.serverErrors += 1;
      return route.fulfill({ status: 500, contentType: 'text/plain', body: 'fault' });
    }
    return route.continue();
  });
  return done;
}

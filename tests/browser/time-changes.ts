import type { Browser, Page } from 'playwright-core';
import { readingKpa } from './known-response.js';
import { signIn } from './sign-in.js';
import { visitOnTest, type VisitOnTest } from './visit-on-test.js';

/** How long a change took from the press on one device to the other device's screen, ms. */
export interface ChangeTimes {
  readonly pullsMs: readonly number[];
  readonly movesMs: readonly number[];
}

/**
 * Two devices of two people: one records pulls and moves the car on the board, one after the other without a pause; the
 * other only looks. Both take the times inside of their pages, by the clock of the one machine that they run on.
 *
 * @param count how many pulls, and how many moves
 */
export async function timeChanges(
  browser: Browser,
  origin: string,
  { plate, count }: { readonly plate: string; readonly count: number },
): Promise<ChangeTimes> {
  const acting = await signIn(browser, origin, 'owner@pullbook.example');
  const looking = await signIn(browser, origin, 'tuner@pullbook.example');
  const visit = await visitOnTest(acting.context.request, plate);
  await Promise.all([acting, looking].map(({ page }) => openVisit(page, visit)));
  const pullsMs = await timed(count, async (n) => {
    const seen = untilShown(looking.page, `button[aria-label="Void pull ${n + 1}"]`);
    return [await recordPull(acting.page, n), await seen];
  });
  await Promise.all([acting, looking].map(({ page }) => openBoard(page, visit)));
  const movesMs = await timed(count, async (n) => {
    const to = n % 2 === 0 ? 'arrived' : 'on-test';
    const seen = untilShown(
      looking.page,
      `section[aria-labelledby="lane-${to}"] a[href="/visits/${visit.visitId}"]`,
    );
    return [await moveCard(acting.page, plate, n % 2 === 0 ? 'Arrived' : 'On test'), await seen];
  });
  await acting.context.close();
  await looking.context.close();
  return { pullsMs, movesMs };
}

/** Does something so often. @param change the n-th (from 0), and when it was pressed and seen, ms since 1970 */
async function timed(count: number, change: (n: number) => Promise<[number, number]>): Promise<number[]> {
  const times: number[] = [];
  for (let n = 0; n < count; n += 1) {
    const [pressedAt, seenAt] = await change(n);
    times.push(seenAt - pressedAt);
  }
  return times;
}

async function openVisit(page: Page, { visitId }: VisitOnTest): Promise<void> {
  await page.goto(`/visits/${visitId}`);
  await page.getByTestId('next-duty').waitFor();
}

async function openBoard(page: Page, { visitId }: VisitOnTest): Promise<void> {
  await page.goto('/board');
  // A board that is kept on the device is shown first, with the car where it stood then.
  await page.locator(`section[aria-labelledby="lane-on-test"] a[href="/visits/${visitId}"]`).waitFor();
}

/** When something is on the screen: at the frame that shows it. */
async function untilShown(page: Page, selector: string): Promise<number> {
  const seenAt = await page.waitForFunction(
    (wanted) => document.querySelector(wanted) !== null && Date.now(),
    selector,
    { polling: 'raf' },
  );
  return Number(await seenAt.jsonValue());
}

/** Types a peak and presses the button. @returns when it was pressed */
async function recordPull(page: Page, n: number): Promise<number> {
  const dutyPct = Math.min(30, 5 + 5 * n);
  await page.getByLabel('Duty driven, %', { exact: true }).fill(String(dutyPct));
  await page.getByLabel('Recorded peak, kPa').fill(String(readingKpa(dutyPct, n)));
  return press(page.getByRole('button', { name: `Record pull ${n + 1}`, exact: true }));
}

async function moveCard(page: Page, plate: string, to: string): Promise<number> {
  await page.getByRole('button', { name: `Move ${plate}` }).click();
  return press(page.getByRole('button', { name: new RegExp(`^${to}$`, 'i') }));
}

async function press(button: ReturnType<Page['getByRole']>): Promise<number> {
  await button.waitFor();
  return button.evaluate((one: HTMLElement) => {
    const pressedAt = Date.now();
    one.click();
    return pressedAt;
  });
}

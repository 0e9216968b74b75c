import type { Page } from 'playwright-core';
import { afterAll, describe, expect, test } from 'vitest';
import { changeRecord } from './change-record.js';
import { Devices } from './screens/devices.js';
import { gateHoldScreens } from './screens/gate-hold-screens.js';
import { pageScreens } from './screens/page-screens.js';
import type { Screen } from './screens/screen.js';
import { sharedBrowser } from './shared-browser.js';
import { sharedOrigin } from './shared-origin.js';
import { visitOnTest } from './visit-on-test.js';

const browser = sharedBrowser();
let devices: Devices | undefined;
afterAll(() => devices?.close());

/** All that a panel can hold: gate hold, correction strength, and a timed override with its own time. */
const fullest: Screen = {
  name: 'timed override with gate hold and correction strength',
  route: null,
  who: 'owner',
  open: async (page) => {
    const own = await visitOnTest(page.request, 'SCR 521', {
      hasTimedOverride: true,
      loop: 'closed',
      holdPct: { min: 0, max: 100, step: 5 },
      correction: { min: 0, max: 20, step: 1 },
    });
    const kept = { kind: 'timed-override', holdSeconds: 10, dutyPct: 50, reason: 'Kept from another visit' };
    await changeRecord(page.request, `/presets/${own.presetId}`, kept);
    await page.goto(`/visits/${own.visitId}`);
    await page.getByLabel('Override held, s').waitFor();
  },
};
const named = (names: readonly string[]) =>
  [...pageScreens, ...gateHoldScreens].filter(({ name }) => names.includes(name));
const bench = [...named(['visit', 'visit-gate-hold', 'visit-gate-hold-closed-loop']), fullest];

/** How far the foot of a button lies below the foot of the window, px; none where it is in sight. */
async function belowWindow(page: Page, name: string | RegExp): Promise<number> {
  const button = page.getByRole('button', { name }).first();
  await button.waitFor();
  return button.evaluate((it) => Math.max(0, it.getBoundingClientRect().bottom - window.innerHeight));
}

/** Whether a press on the middle of a key reaches it. */
const isFree = (page: Page, name: string): Promise<boolean> =>
  page.getByRole('button', { name, exact: true }).evaluate((key) => {
    const { left, right, top, bottom } = key.getBoundingClientRect();
    return key.contains(document.elementFromPoint((left + right) / 2, (top + bottom) / 2));
  });

describe.each([
  { width: 1180, height: 820 },
  { width: 820, height: 1180 },
])('on a tablet of $width by $height px', (viewport) => {
  test.each(bench)('a pull is typed and recorded without scrolling: $name', async (screen) => {
    devices ??= new Devices(browser(), sharedOrigin());
    const { context, page } = await devices.open(screen, { viewport });
    expect(bench).toHaveLength(4);
    expect(await page.evaluate(() => window.scrollY)).toBe(0);
    expect(await belowWindow(page, /^Record pull/)).toBe(0);
    for (const key of ['7', '0', 'Decimal point', 'Delete last figure']) {
      expect(await isFree(page, key), `key ${key} is free`).toBe(true);
    }
    await context.close();
  });
});

test('a hint that makes the panel longer leaves the button in sight', async () => {
  devices ??= new Devices(browser(), sharedOrigin());
  const [screen] = named(['visit-gate-hold']);
  if (screen === undefined) throw new Error('the list has no such screen');
  const viewport = { width: 1180, height: 820 };
  const { context, page } = await devices.open(screen, { viewport });
  await page.getByLabel('Duty driven, %', { exact: true }).fill('100');
  await page
    .getByRole('complementary')
    .getByText(/points that one pull may go up/)
    .waitFor();
  await page.evaluate(() => window.scrollTo(0, 0));
  expect(await belowWindow(page, /^Record pull/)).toBe(0);
  await context.close();
});

import type { Page } from 'playwright-core';
import { visitOnTest, type LeftOut } from '../visit-on-test.js';
import type { Screen } from './screen.js';

const visit = { route: '/visits/[id]', who: 'owner', isForGloves: true } as const;

/** Opens a visit that is without what is named; ends at the heading of what the product asks for instead. */
const without = (plate: string, leftOut: readonly LeftOut[], asksFor: RegExp) => async (page: Page) => {
  const { visitId } = await visitOnTest(page.request, plate, {}, leftOut);
  await page.goto(`/visits/${visitId}`);
  await page.getByRole('heading', { name: asksFor }).waitFor();
};

/** The visit before its first pull: what has to be known, agreed and looked at, in the order in which it is asked for. */
export const visitStartScreens: readonly Screen[] = [
  {
    ...visit,
    name: 'visit-start',
    open: without('SCR 301', ['controller', 'goal', 'session'], /^Start a tuning session/),
  },
  {
    ...visit,
    name: 'visit-start-faults',
    open: async (page) => {
      await without('SCR 302', ['controller', 'goal', 'session'], /^Start a tuning session/)(page);
      await page.getByLabel('Air temperature', { exact: false }).fill('warm');
      await page.getByRole('button', { name: 'Start tuning session' }).click();
      await page.locator('[aria-invalid="true"]').first().waitFor();
    },
  },
  {
    ...visit,
    name: 'visit-readiness',
    open: without('SCR 303', ['controller', 'goal', 'readiness'], /^Readiness check/),
  },
  {
    ...visit,
    name: 'visit-readiness-open',
    open: async (page) => {
      await without('SCR 304', ['readiness'], /^Readiness check/)(page);
      await page.getByRole('checkbox').first().check();
      await page.getByRole('button', { name: 'Save readiness check' }).click();
      await page.getByText('Still open', { exact: true }).waitFor();
    },
  },
  {
    ...visit,
    name: 'visit-controller',
    open: without('SCR 305', ['controller', 'goal'], /^Which controller is in/),
  },
  { ...visit, name: 'visit-goal', open: without('SCR 306', ['goal'], /^Agree the goal|goal|target/i) },
  {
    ...visit,
    name: 'visit-add-preset',
    open: async (page) => {
      await without('SCR 307', [], /^Pull 1:/)(page);
      await page.getByRole('button', { name: 'Add preset' }).click();
      await page.getByRole('heading', { name: /^New preset for/ }).waitFor();
    },
  },
  {
    ...visit,
    name: 'visit-menu',
    within: '[data-list]',
    open: async (page) => {
      await without('SCR 308', [], /^Pull 1:/)(page);
      await page.getByRole('button', { name: /^Menu of/ }).click();
      await page.getByRole('button', { name: 'Sign out' }).waitFor();
    },
    afterResize: async (page) => {
      const signOut = page.getByRole('button', { name: 'Sign out' });
      if (!(await signOut.isVisible())) await page.getByRole('button', { name: /^Menu of/ }).click();
      await signOut.waitFor();
    },
  },
];

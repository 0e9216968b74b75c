import type { Page } from 'playwright-core';
import { visitOnTest, type VisitOnTest } from '../visit-on-test.js';
import { pullOnRecord } from './drive.js';
import type { Screen } from './screen.js';

const visit = { route: '/visits/[id]', who: 'owner', isForGloves: true } as const;

type Driven = readonly (readonly [dutyPct: number, peakKpa: number])[];

/** Far above what two low pulls lead one to expect, and past the ceiling. */
const soared: Driven = [
  [10, 62],
  [20, 68],
  [25, 150],
];
/** Three pulls running below what less duty made before. */
const lost: Driven = [
  [10, 62],
  [20, 72],
  [30, 85],
  [40, 100],
  [45, 80],
  [45, 79],
  [45, 81],
];

async function stoppedVisit(page: Page, plate: string, driven: Driven): Promise<VisitOnTest> {
  const own = await visitOnTest(page.request, plate);
  for (const [dutyPct, peakKpa] of driven) await pullOnRecord(page, own, { dutyPct, peakKpa });
  await page.goto(`/visits/${own.visitId}`);
  await page.getByRole('heading', { name: 'Stop' }).waitFor();
  return own;
}

const askForSound = (page: Page) => page.getByRole('button', { name: 'Nothing wrong found …' }).click();

/** A stop that may be a fault, and the way on once the car was looked over. */
export const stopScreens: readonly Screen[] = [
  {
    ...visit,
    name: 'visit-boost-lost',
    open: async (page) => {
      await stoppedVisit(page, 'SCR 119', lost);
      await page.getByText('What did you find?').waitFor();
    },
  },
  {
    ...visit,
    name: 'visit-look-over',
    open: async (page) => {
      await stoppedVisit(page, 'SCR 120', soared);
      await askForSound(page);
      await page.getByRole('dialog', { name: 'Looked over after pull 3' }).waitFor();
    },
  },
  {
    ...visit,
    name: 'visit-found-sound',
    open: async (page) => {
      await stoppedVisit(page, 'SCR 121', soared);
      await askForSound(page);
      await page.getByLabel('What did you look at?').fill('hoses on, gate free, solenoid clicks');
      await page.getByRole('button', { name: 'Looked over: the car is sound' }).click();
      await page.getByText('looked over, sound: hoses on').waitFor();
      await page.getByTestId('next-duty').waitFor();
      await page.getByText('All sent').first().waitFor();
      await page.evaluate(() => window.scrollTo(0, 0));
    },
  },
];

import type { NextCorrection } from '@pullbook/contracts';
import type { Page } from 'playwright-core';
import { findCard } from '../find-card.js';
import { visitOnTest, type VisitOnTest } from '../visit-on-test.js';
import { changeRecord } from '../change-record.js';
import { driveUntilAccepted, pullOnRecord } from './drive.js';
import type { Screen } from './screen.js';
import { stopScreens } from './stop-screens.js';
import { tellMe } from './tell-me.js';

const visit = { route: '/visits/[id]', who: 'owner', isForGloves: true } as const;
const closedLoop = {
  loop: 'closed',
  holdPct: { min: 0, max: 100, step: 5 },
  correction: { min: 0, max: 20, step: 1 },
} as const;

const goTo = async (page: Page, { visitId }: VisitOnTest): Promise<unknown> =>
  page.goto(`/visits/${visitId}`);

async function drivenVisit(page: Page): Promise<void> {
  await page.goto(`/visits/${(await findCard(page, /^next pull/i)).visitId}`);
  await page.getByTestId('next-duty').waitFor();
}

const hunts: NextCorrection = {
  applies: true,
  ready: true,
  missing: [],
  cautions: [],
  advice: {
    action: 'lower',
    strength: 9,
    reasons: [
      { code: 'hunts', text: 'Boost swings about the target 2.4 times a second and hardly dies away.' },
    ],
    settledErrorKpa: -0.5,
    frequencyHz: 2.4,
    dampingRatio: 0.1,
  },
  restsOnPulls: [1, 2],
  keptStrength: null,
  lastStrength: 12,
  range: closedLoop.correction,
};

/** The visit in the states that a tuner meets on the way, from the first word to the kept duty. */
export const visitScreens: readonly Screen[] = [
  {
    ...visit,
    name: 'visit-first-pull',
    open: async (page) => {
      await goTo(page, await visitOnTest(page.request, 'SCR 104'));
      await page.getByRole('heading', { name: /^Pull 1:/ }).waitFor();
    },
  },
  {
    ...visit,
    name: 'visit-base-unknown',
    open: async (page) => {
      const own = await visitOnTest(page.request, 'SCR 118', { dutyPct: { min: 20, max: 100, step: 1 } });
      await goTo(page, own);
      await page.getByText('the base boost of this car is not known').first().waitFor();
    },
  },
  {
    ...visit,
    name: 'visit-over-ceiling',
    open: async (page) => {
      const own = await visitOnTest(page.request, 'SCR 105');
      await pullOnRecord(page, own, { dutyPct: 10, peakKpa: 62 });
      await pullOnRecord(page, own, { dutyPct: 15, peakKpa: 138 });
      await goTo(page, own);
      await page.getByRole('heading', { name: /Stop/ }).waitFor();
      await page
        .getByText(/ceiling/i)
        .first()
        .waitFor();
    },
  },
  ...stopScreens,
  {
    ...visit,
    name: 'visit-in-psi',
    open: async (page) => {
      await tellMe(page, { units: { pressure: 'psi', temperature: 'F' } });
      await drivenVisit(page);
      const said = await page.locator('main').innerText();
      if (!said.includes('psi') || said.includes('kPa')) throw new Error('the visit still speaks of kPa');
    },
  },
  {
    ...visit,
    name: 'visit-faults',
    open: async (page) => {
      await drivenVisit(page);
      await page.getByLabel('Duty driven, %', { exact: true }).fill('80');
      await page.getByLabel('Recorded peak, kPa').fill('abc');
      await page.getByRole('button', { name: /^Record pull/ }).click();
      await page.locator('[aria-invalid="true"]').first().waitFor();
    },
  },
  {
    ...visit,
    name: 'visit-accepted',
    open: async (page) => {
      const own = await visitOnTest(page.request, 'SCR 106');
      const dutyPct = await driveUntilAccepted(page, own);
      await goTo(page, own);
      await page.getByRole('button', { name: `Keep ${dutyPct} % for this preset` }).waitFor();
    },
  },
  {
    ...visit,
    name: 'visit-correction',
    open: async (page) => {
      const own = await visitOnTest(page.request, 'SCR 108', closedLoop);
      await changeRecord(page.request, `/presets/${own.presetId}`, {
        dutyPct: 50,
        reason: 'Kept from another visit',
      });
      await page.route('**/next-correction?*', (route) => route.fulfill({ json: hunts }));
      await goTo(page, own);
      await page.getByTestId('next-correction').waitFor();
    },
  },
  {
    ...visit,
    name: 'visit-void',
    open: async (page) => {
      await drivenVisit(page);
      await page
        .getByRole('button', { name: /^Void pull/ })
        .first()
        .click();
      await page.getByRole('button', { name: 'Void this pull' }).click();
      await page.getByText(/a void pull needs a reason/).waitFor();
    },
  },
];

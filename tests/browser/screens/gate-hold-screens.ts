import type { NextGateHold } from '@pullbook/contracts';
import type { Page } from 'playwright-core';
import { trueMeanPeakKpa } from '../known-response.js';
import { changeRecord } from '../change-record.js';
import { visitOnTest, type VisitOnTest } from '../visit-on-test.js';
import { driveUntilAccepted } from './drive.js';
import type { Screen } from './screen.js';

const visit = { route: '/visits/[id]', who: 'owner', isForGloves: true } as const;
const holds = { holdPct: { min: 0, max: 100, step: 5 } } as const;

type KeptVisit = VisitOnTest & { readonly dutyPct: number };

/** A visit whose duty was found and kept: the search for the gate hold begins. */
async function keptVisit(page: Page, plate: string, kind: object): Promise<KeptVisit> {
  const own = await visitOnTest(page.request, plate, { ...holds, ...kind });
  const dutyPct = await driveUntilAccepted(page, own);
  await changeRecord(page.request, `/presets/${own.presetId}`, { dutyPct, reason: 'Found' });
  return { ...own, dutyPct };
}

/** Puts a pull at a hold on record, at the duty that is kept. */
async function pullAtHold(page: Page, own: KeptVisit, holdPct: number, peakKpa: number): Promise<void> {
  const answer = await page.request.post(`/api/v1/tuning-sessions/${own.sessionId}/pulls`, {
    data: {
      ...{ presetId: own.presetId, dutyPct: own.dutyPct, holdPct, peakKpa },
      settledKpa: trueMeanPeakKpa(own.dutyPct),
      riseTimeS: 1.6 - holdPct / 200,
      onsetRpm: 3600 - 4 * holdPct,
    },
  });
  if (!answer.ok()) throw new Error(`pull: ${answer.status()} ${await answer.text()}`);
}

/** Calm pulls up to a hold of 30 %, then two past the ceiling of 131 kPa: the search has stopped. */
export async function stoppedAtHold(page: Page, plate: string): Promise<KeptVisit> {
  const own = await keptVisit(page, plate, {});
  const settledKpa = trueMeanPeakKpa(own.dutyPct);
  for (const holdPct of [10, 20, 30]) await pullAtHold(page, own, holdPct, settledKpa * 1.005);
  for (const [holdPct, peakKpa] of [
    [40, 133],
    [35, 132.5],
  ] as const)
    await pullAtHold(page, own, holdPct, peakKpa);
  await page.goto(`/visits/${own.visitId}`);
  await page.getByRole('heading', { name: 'Stop: gate hold' }).waitFor();
  return own;
}

/** Drives the holds that are asked for, on a car that overshoots more and more above 40 %, until the search ends. */
async function driveUntilFound(page: Page, own: KeptVisit): Promise<void> {
  for (let n = 0; n < 25; n += 1) {
    const asked = await page.request.get(
      `/api/v1/tuning-sessions/${own.sessionId}/next-gate-hold?presetId=${own.presetId}`,
    );
    const { advice } = (await asked.json()) as NextGateHold;
    const holdPct = advice?.holdPct ?? null;
    if (holdPct === null || advice === null) throw new Error(`no hold: ${JSON.stringify(advice)}`);
    if (advice.action !== 'pull' && advice.action !== 'repeat') return;
    const overshootPct = 0.5 + Math.max(0, holdPct - 40) * 0.2;
    await pullAtHold(page, own, holdPct, trueMeanPeakKpa(own.dutyPct) * (1 + overshootPct / 100));
  }
  throw new Error('25 pulls and no gate hold');
}

/** The search for the gate hold, with a controller in open loop and in closed loop alike. */
export const gateHoldScreens: readonly Screen[] = [
  {
    ...visit,
    name: 'visit-gate-hold',
    open: async (page) => {
      const own = await keptVisit(page, 'SCR 501', {});
      await page.goto(`/visits/${own.visitId}`);
      await page.getByRole('heading', { name: /set gate hold to/ }).waitFor();
    },
  },
  {
    ...visit,
    name: 'visit-gate-hold-closed-loop',
    open: async (page) => {
      const own = await keptVisit(page, 'SCR 502', {
        loop: 'closed',
        correction: { min: 0, max: 20, step: 1 },
      });
      await page.goto(`/visits/${own.visitId}`);
      await page.getByRole('heading', { name: /set gate hold to/ }).waitFor();
    },
  },
  {
    ...visit,
    name: 'visit-gate-hold-stop',
    open: async (page) => {
      await stoppedAtHold(page, 'SCR 504');
      await page.getByText('What did you find?').waitFor();
    },
  },
  {
    ...visit,
    name: 'visit-gate-hold-found',
    open: async (page) => {
      const own = await keptVisit(page, 'SCR 503', {});
      await driveUntilFound(page, own);
      await page.goto(`/visits/${own.visitId}`);
      await page.getByRole('heading', { name: /Gate hold found|Back to duty/ }).waitFor();
    },
  },
];

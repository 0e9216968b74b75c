import type { NextPull } from '@pullbook/contracts';
import type { Page } from 'playwright-core';
import { readingKpa } from '../known-response.js';
import type { VisitOnTest } from '../visit-on-test.js';

/** Puts a pull on record. */
export async function pullOnRecord(
  page: Page,
  { sessionId, presetId }: VisitOnTest,
  pull: { readonly dutyPct: number; readonly peakKpa: number },
): Promise<void> {
  const answer = await page.request.post(`/api/v1/tuning-sessions/${sessionId}/pulls`, {
    data: { presetId, ...pull },
  });
  if (!answer.ok()) throw new Error(`pull: ${answer.status()} ${await answer.text()}`);
}

/** Drives what the advice asks for on the test's own response until it accepts. @returns the duty */
export async function driveUntilAccepted(page: Page, visit: VisitOnTest): Promise<number> {
  for (let n = 0; n < 25; n += 1) {
    const asked = await page.request.get(
      `/api/v1/tuning-sessions/${visit.sessionId}/next-pull?presetId=${visit.presetId}`,
    );
    const { advice } = (await asked.json()) as NextPull;
    const dutyPct = advice?.duty;
    if (dutyPct === undefined || dutyPct === null) throw new Error(`no duty: ${JSON.stringify(advice)}`);
    if (advice?.action === 'accept') return dutyPct;
    await pullOnRecord(page, visit, { dutyPct, peakKpa: readingKpa(dutyPct, n) });
  }
  throw new Error('25 pulls without an accept');
}

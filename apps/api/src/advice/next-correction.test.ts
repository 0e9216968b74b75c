import type { Hunting, NextCorrection } from '@pullbook/contracts';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type * as z from 'zod';
import { openTestWorkshop, type TestWorkshop } from '../plumbing/test-workshop.js';
import { fillTestYard, pullAt, type TestYard } from '../tuning-sessions/test-yard.js';

let shop: TestWorkshop;
let yard: TestYard;
beforeEach(async () => {
  shop = await openTestWorkshop();
  yard = await fillTestYard(shop);
  await shop.owner.actor.db.controller.update({
    where: { id: yard.controllerId },
    data: { loop: 'closed', correction: { min: 0, max: 20, step: 1 } },
  });
});
afterEach(() => shop.close());

const next = async (): Promise<NextCorrection> =>
  (
    await shop.tuner.ask(
      'GET',
      `/tuning-sessions/${yard.sessionId}/next-correction?presetId=${yard.presetId}`,
    )
  ).json();

/** A pull as a log would have brought it. */
async function loggedPull(
  correctionStrength: number,
  settledKpa: number,
  hunting: z.infer<typeof Hunting> | null,
): Promise<void> {
  const pull = await pullAt(shop.tuner, yard, 10, { correctionStrength, settledKpa, peakKpa: 142 });
  await shop.owner.actor.db.pull.update({
    where: { id: pull.id },
    data: {
      source: 'log',
      huntingHz: hunting?.frequencyHz ?? null,
      huntingDampingRatio: hunting?.dampingRatio ?? null,
      huntingAmplitudeKpa: hunting?.amplitudeKpa ?? null,
    },
  });
}

describe('GET /tuning-sessions/{id}/next-correction', () => {
  it('wants a log: a typed peak does not show whether boost hunts', async () => {
    await pullAt(shop.tuner, yard, 10, { correctionStrength: 8, settledKpa: 139 });
    const answer = await next();
    expect(answer).toMatchObject({ applies: true, ready: false, advice: null, restsOnPulls: [] });
    expect(answer.missing[0]).toContain('take in a log');
  });

  it('lowers a strength at which boost hunts, by frequency and damping', async () => {
    await loggedPull(12, 139.5, { frequencyHz: 2.4, dampingRatio: 0.1, amplitudeKpa: 6 });
    const answer = await next();
    expect(answer).toMatchObject({ ready: true, restsOnPulls: [1], lastStrength: 12 });
    expect(answer.advice).toMatchObject({ action: 'lower', frequencyHz: 2.4, dampingRatio: 0.1 });
    expect(answer.advice?.strength).toBeLessThan(12);
    expect(answer.advice?.strength).toBeGreaterThanOrEqual(6);
  });

  it('raises one at which boost sags, and keeps one at which it does neither', async () => {
    await loggedPull(4, 132, null);
    expect((await next()).advice).toMatchObject({ action: 'raise', settledErrorKpa: -8 });
    await loggedPull(5, 139.8, null);
    expect((await next()).advice).toMatchObject({ action: 'keep', strength: 5 });
  });

  it('refuses a strength that the controller cannot be set to', async () => {
    const payload = { presetId: yard.presetId, dutyPct: 10, peakKpa: 60, correctionStrength: 21 };
    const answer = await shop.tuner.ask('POST', `/tuning-sessions/${yard.sessionId}/pulls`, { payload });
    expect(answer.statusCode).toBe(400);
    expect(answer.json()).toMatchObject({ errors: [{ field: 'correctionStrength' }] });
  });

  it('does not apply to an open-loop controller, and is not told to another workshop', async () => {
    const url = `/tuning-sessions/${yard.sessionId}/next-correction?presetId=${yard.presetId}`;
    expect((await shop.stranger.ask('GET', url)).statusCode).toBe(404);
    await shop.owner.actor.db.controller.update({
      where: { id: yard.controllerId },
      data: { loop: 'open' },
    });
    expect(await next()).toMatchObject({ applies: false, ready: false, advice: null });
  });
});

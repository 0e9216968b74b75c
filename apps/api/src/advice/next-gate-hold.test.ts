import type { NextGateHold, PullNew } from '@pullbook/contracts';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { openTestWorkshop, type TestWorkshop } from '../plumbing/test-workshop.js';
import {
  fillTestYard,
  proveTestPreset,
  pullAt,
  testPeakKpa,
  type TestYard,
} from '../tuning-sessions/test-yard.js';

let shop: TestWorkshop;
let yard: TestYard;
beforeEach(async () => {
  shop = await openTestWorkshop();
  yard = await fillTestYard(shop);
});
afterEach(() => shop.close());

const url = () => `/tuning-sessions/${yard.sessionId}/next-gate-hold?presetId=${yard.presetId}`;
const next = async (): Promise<NextGateHold> => (await shop.tuner.ask('GET', url())).json();

/** Overshoot of the test's car, %: none up to a hold of 40 %, then steeply up. */
const overshootPct = (holdPct: number): number => 0.5 + Math.max(0, holdPct - 40) * 0.2;

async function pullAtHold(dutyPct: number, holdPct: number, more: Partial<PullNew> = {}) {
  const settledKpa = testPeakKpa(dutyPct);
  const peakKpa = settledKpa * (1 + overshootPct(holdPct) / 100);
  return pullAt(shop.tuner, yard, dutyPct, {
    ...{ holdPct, settledKpa, peakKpa, riseTimeS: 1.6 - holdPct / 200, onsetRpm: 3600 - 4 * holdPct },
    ...more,
  });
}

/** Follows the advice, as careful as it is, until it neither pulls nor repeats. */
async function climb(dutyPct: number): Promise<NextGateHold> {
  for (let pulls = 0; pulls < 20; pulls += 1) {
    const answer = await next();
    const { advice, highestHoldPct } = answer;
    if (advice === null || (advice.action !== 'pull' && advice.action !== 'repeat')) return answer;
    const holdPct = advice.holdPct ?? NaN;
    expect(holdPct).toBeLessThanOrEqual((highestHoldPct ?? 0) + 10);
    expect(holdPct).toBeLessThanOrEqual(100);
    expect(advice.prediction?.probabilityOverCeiling).toBeLessThanOrEqual(0.02);
    await pullAtHold(dutyPct, holdPct);
  }
  throw new Error('no end within 20 pulls');
}

describe('GET /tuning-sessions/{id}/next-gate-hold', () => {
  it('waits for the duty', async () => {
    expect(await next()).toMatchObject({
      ready: false,
      advice: null,
      missing: ['find the duty first, and keep it'],
    });
  });

  it('begins within one step of the lowest hold, with cautions and limits', async () => {
    const dutyPct = await proveTestPreset(shop.tuner, yard);
    const answer = await next();
    expect(answer).toMatchObject({
      ready: true,
      missing: [],
      dutyPct,
      keptHoldPct: null,
      highestHoldPct: null,
      range: { min: 0, max: 100, step: 5 },
      overshootLimitPct: 5,
      advice: { action: 'pull', holdPct: 10 },
    });
    expect(answer.cautions.length).toBeGreaterThan(0);
    expect(answer.notCountedPulls.length).toBeGreaterThan(0);
  });

  it('climbs by steps, never past range and step limit, and accepts with what was gained', async () => {
    const dutyPct = await proveTestPreset(shop.tuner, yard);
    const answer = await climb(dutyPct);
    expect(answer.advice?.action).toMatch(/accept|back-to-duty/);
    expect(answer.advice?.gain?.riseTimeS).toBeGreaterThan(0);
    expect(answer.advice?.gain?.onsetRpm).toBeGreaterThan(0);
    expect(answer.provingPullNumbers.length).toBeGreaterThan(0);
    expect(overshootPct(answer.advice?.holdPct ?? NaN)).toBeLessThanOrEqual(5);
  });

  it('leaves the duty advice alone: a raised hold is not taken for the duty', async () => {
    const dutyPct = await proveTestPreset(shop.tuner, yard);
    for (const holdPct of [10, 20, 30, 40, 50, 60]) await pullAtHold(dutyPct, holdPct);
    const duty = await shop.tuner.ask('GET', url().replace('next-gate-hold', 'next-pull'));
    expect(duty.json().advice).toMatchObject({ action: 'accept', duty: dutyPct });
  });

  it('names the pulls that cannot count because they have no settled boost', async () => {
    const dutyPct = await proveTestPreset(shop.tuner, yard);
    const pull = await pullAt(shop.tuner, yard, dutyPct, { holdPct: 10 });
    expect((await next()).notCountedPulls).toContain(pull.number);
  });

  it('says that a controller without a gate hold has none', async () => {
    await shop.owner.actor.db.controller.update({
      where: { id: yard.controllerId },
      data: { holdPct: null as never },
    });
    const answer = await next();
    expect(answer).toMatchObject({ ready: false, advice: null, range: null });
    expect(answer.missing[0]).toBe("this car's controller has no gate hold");
  });

  it('gives no hold before the readiness check is passed, and none to another workshop', async () => {
    await proveTestPreset(shop.tuner, yard);
    await shop.owner.actor.db.car.update({
      where: { id: yard.carId },
      data: {
        limits: {
          overBoostCutKpa: null,
          sensorFullScaleKpa: null,
          actuatorKpa: null,
          turboKpa: 150,
          engineKpa: null,
        },
      },
    });
    expect(await next()).toMatchObject({ ready: false, advice: null });
    expect((await shop.stranger.ask('GET', url())).statusCode).toBe(404);
    const other = await fillTestYard(shop);
    const strange = `/tuning-sessions/${yard.sessionId}/next-gate-hold?presetId=${other.presetId}`;
    expect((await shop.tuner.ask('GET', strange)).statusCode).toBe(422);
  });
});

describe('a gate hold search that stopped since the ceiling was passed again', () => {
  /** Two pulls past the ceiling at two holds: a fault, or a car that overshoots steeply. */
  async function passTwice(dutyPct: number) {
    for (const holdPct of [10, 20, 30, 40]) await pullAtHold(dutyPct, holdPct);
    await pullAtHold(dutyPct, 50, { peakKpa: 158 });
    return pullAtHold(dutyPct, 45, { peakKpa: 157 });
  }
  const foundSound = ({ id }: { id: string }) =>
    shop.tuner.ask('POST', `/pulls/${id}/found-sound`, { payload: { note: 'gate free' } });

  it('goes on once the car is found sound, below what passed, and stops at the next pass', async () => {
    const dutyPct = await proveTestPreset(shop.tuner, yard);
    const last = await passTwice(dutyPct);
    const stopped = await next();
    expect(stopped).toMatchObject({ ready: true, foundSoundAfterPull: null, advice: { action: 'stop' } });
    expect(stopped.advice?.reasons[0]?.code).toBe('ceiling-passed-again');
    await foundSound(last);
    const { advice, foundSoundAfterPull, restsOnPulls } = await next();
    expect({ foundSoundAfterPull, restsOnPulls }).toEqual({
      foundSoundAfterPull: last.number,
      restsOnPulls: stopped.restsOnPulls,
    });
    expect(advice?.action).not.toBe('stop');
    expect(advice?.holdPct).toBeLessThan(45);
    expect(advice?.reasons.at(-1)?.code).toBe('found-sound');
    await pullAtHold(dutyPct, 40, { peakKpa: 157 });
    expect((await next()).advice).toMatchObject({
      action: 'stop',
      reasons: [{ code: 'ceiling-passed-again' }],
    });
  });

  it('takes a look at the car after a pull that cannot count here for those before it, until that is voided', async () => {
    const dutyPct = await proveTestPreset(shop.tuner, yard);
    await passTwice(dutyPct);
    const unsettled = await pullAt(shop.tuner, yard, dutyPct, { holdPct: 30 });
    await foundSound(unsettled);
    const marked = await next();
    expect(marked.restsOnPulls).not.toContain(unsettled.number);
    expect(marked.advice?.action).not.toBe('stop');
    await shop.tuner.ask('POST', `/pulls/${unsettled.id}/void`, { payload: { reason: 'throttle lifted' } });
    expect(await next()).toMatchObject({ foundSoundAfterPull: null, advice: { action: 'stop' } });
  });
});

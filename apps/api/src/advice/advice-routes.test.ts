import { cautionsBeforePulling } from '@pullbook/contracts';
import { adviseDuty, adviseGateHold } from '@pullbook/tuning-math';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { openTestWorkshop, type TestWorkshop } from '../plumbing/test-workshop.js';
import { fillTestYard, pullAt, testSession, type TestYard } from '../tuning-sessions/test-yard.js';

let shop: TestWorkshop;
beforeEach(async () => {
  shop = await openTestWorkshop();
});
afterEach(() => shop.close());

const asked = {
  controller: { dutyMin: 0, dutyMax: 100, dutyStep: 1 },
  goal: { targetKpa: 140, toleranceKpa: 4, ceilingKpa: 155 },
  stepLimit: 10,
  riskLimit: 0.02,
  baseKpa: 55,
  pulls: [{ duty: 10, peakKpa: 62.1 }],
};

describe('POST /advice/duty', () => {
  it('tells any person what the tuning math says', async () => {
    const answer = await shop.desk.ask('POST', '/advice/duty', { payload: asked });
    expect(answer.statusCode).toBe(200);
    const { action, duty, prediction, reasons, curve } = adviseDuty(asked);
    expect(answer.json()).toEqual({ action, duty, prediction, reasons, curve });
    expect(answer.json()).toMatchObject({ action: 'pull' });
  });

  it('fills in step limit, risk limit and an unknown base boost', async () => {
    const { controller, goal, pulls } = asked;
    const bare = await shop.tuner.ask('POST', '/advice/duty', { payload: { controller, goal, pulls } });
    const filled = { controller, goal, pulls, stepLimit: 10, riskLimit: 0.02, baseKpa: null };
    const { action, duty } = adviseDuty(filled);
    expect(bare.json()).toMatchObject({ action, duty });
  });

  it.each([
    ['a ceiling under the target', { goal: { ...asked.goal, ceilingKpa: 130 } }, 'goal.ceilingKpa'],
    ['a duty outside the range', { controller: { ...asked.controller, dutyMax: 5 } }, 'pulls.0.duty'],
    ['a step limit above what is allowed', { stepLimit: 11 }, 'stepLimit'],
    ['letters for a peak', { pulls: [{ duty: 10, peakKpa: 'abc' }] }, 'pulls.0.peakKpa'],
    ['no goal', { goal: undefined }, 'goal'],
  ])('refuses %s, naming the field', async (_what, change, field) => {
    const answer = await shop.tuner.ask('POST', '/advice/duty', { payload: { ...asked, ...change } });
    expect(answer.statusCode).toBe(400);
    expect(answer.json()).toMatchObject({ code: 'invalid-request', errors: [{ field }] });
  });

  it('wants somebody signed in', async () => {
    const answer = await shop.app.inject({ method: 'POST', url: '/api/v1/advice/duty', payload: asked });
    expect(answer.statusCode).toBe(401);
  });
});

describe('POST /advice/gate-hold', () => {
  const request = {
    controller: { holdMin: 0, holdMax: 100, holdStep: 1 },
    goal: { targetKpa: 140, toleranceKpa: 4, ceilingKpa: 155, overshootLimitPct: 5 },
    stepLimit: 10,
    riskLimit: 0.02,
    pulls: [{ holdPct: 40, peakKpa: 141, settledKpa: 139, riseTimeS: 1.4 }],
  };

  it('tells what the tuning math says, within the step limit', async () => {
    const answer = await shop.desk.ask('POST', '/advice/gate-hold', { payload: request });
    expect(answer.statusCode).toBe(200);
    const { action, holdPct, reasons } = adviseGateHold(request);
    expect(answer.json()).toMatchObject({ action, holdPct, reasons });
    expect(answer.json().holdPct).toBeLessThanOrEqual(50);
  });

  it('refuses a hold outside the range, naming the field', async () => {
    const payload = { ...request, controller: { ...request.controller, holdMax: 30 } };
    const answer = await shop.desk.ask('POST', '/advice/gate-hold', { payload });
    expect(answer.statusCode).toBe(400);
    expect(answer.json().errors[0].field).toBe('pulls.0.holdPct');
  });
});

describe('POST /air', () => {
  it('gives the density of moist air as the CIPM-2007 equation does', async () => {
    // Picard, Davis, Gläser, Fujii, Metrologia 45 (2008) 149-155: 20 °C, 101.325 kPa, 50 % is 1.199314 kg/m³.
    const payload = { temperatureC: 20, barometerAbsKpa: 101.325, humidityPct: 50 };
    const answer = await shop.desk.ask('POST', '/air', { payload });
    expect(answer.statusCode).toBe(200);
    expect(answer.json().densityKgPerM3).toBeCloseTo(1.199314, 4);
    expect(answer.json().densityWithinPublishedRange).toBe(true);
  });

  it('carries humidity through to the correction, and flags a factor outside its range', async () => {
    // Recomputed independently from the formula of SAE J1349 JUN1990: 98 kPa, 30 °C, 50 % is 1.048537.
    const wet = await shop.desk.ask('POST', '/air', {
      payload: { temperatureC: 30, barometerAbsKpa: 98, humidityPct: 50 },
    });
    const byStandard = new Map(
      wet
        .json()
        .corrections.map((correction: { standard: string; factor: number }) => [
          correction.standard,
          correction.factor,
        ]),
    );
    expect(byStandard.get('sae-j1349-1990')).toBeCloseTo(1.048537, 4);
    const thin = await shop.desk.ask('POST', '/air', {
      payload: { temperatureC: 25, barometerAbsKpa: 85, humidityPct: 0 },
    });
    const iso = thin
      .json()
      .corrections.find(({ standard }: { standard: string }) => standard === 'iso-1585-spark');
    expect(iso.valid).toBe(false);
    expect(iso.flags.length).toBeGreaterThan(0);
  });

  it('wants a barometer or a sea-level pressure', async () => {
    const answer = await shop.desk.ask('POST', '/air', { payload: { temperatureC: 20 } });
    expect(answer.statusCode).toBe(400);
    expect(answer.json()).toMatchObject({ errors: [{ field: 'barometerAbsKpa' }] });
  });
});

describe('POST /forecast', () => {
  const pulls = [138, 140, 141, 139].map((peakKpa) => ({ peakKpa, gear: 4, intakeC: 20, gradientPct: 0 }));
  const conditions = { gear: 4, gradientPct: 0, intakeC: 20, barometerAbsKpa: 100, heatSoakC: 0 };

  it('forecasts about what was pulled for the same conditions, and says what it does not know', async () => {
    const same = (
      await shop.desk.ask('POST', '/forecast', { payload: { ceilingKpa: 155, pulls, conditions } })
    ).json();
    expect(same.lowKpa).toBeLessThan(139.5);
    expect(same.highKpa).toBeGreaterThan(139.5);
    const payload = { ceilingKpa: 155, pulls, conditions: { ...conditions, intakeC: -15 } };
    const cold = (await shop.desk.ask('POST', '/forecast', { payload })).json();
    expect(cold.outside).toContain('intake');
    expect(cold.highKpa - cold.lowKpa).toBeGreaterThan(same.highKpa - same.lowKpa);
  });

  it('refuses an empty list of pulls', async () => {
    const answer = await shop.desk.ask('POST', '/forecast', {
      payload: { ceilingKpa: 155, pulls: [], conditions },
    });
    expect(answer.statusCode).toBe(400);
    expect(answer.json()).toMatchObject({ errors: [{ field: 'pulls' }] });
  });
});

describe('GET /tuning-sessions/{id}/next-pull', () => {
  let yard: TestYard;
  beforeEach(async () => {
    yard = await fillTestYard(shop);
  });
  const next = async (sessionId = yard.sessionId, presetId = yard.presetId) =>
    shop.desk.ask('GET', `/tuning-sessions/${sessionId}/next-pull?presetId=${presetId}`);

  it('advises the first pull with cautions, limits and reasons', async () => {
    const answer = (await next()).json();
    expect(answer).toMatchObject({
      ready: true,
      missing: [],
      cautions: [...cautionsBeforePulling],
      highestDutyPct: null,
      stepLimit: 10,
      riskLimit: 0.02,
      advice: { action: 'pull' },
    });
    expect(answer.advice.duty).toBeLessThanOrEqual(10);
    const [why, range] = answer.advice.reasons;
    expect(why.pieces).toContainEqual({ value: answer.advice.duty, unit: '%' });
    expect(range).toMatchObject({
      code: 'expected-range',
      pieces: ['Expect ', { value: expect.any(Number), to: expect.any(Number), unit: 'kPa' }, '.'],
    });
  });

  it('rests on the pulls of this visit and goes no further than the step limit', async () => {
    await pullAt(shop.tuner, yard, 10);
    await pullAt(shop.tuner, yard, 20);
    const answer = (await next()).json();
    expect(answer.highestDutyPct).toBe(20);
    expect(answer.advice.duty).toBeLessThanOrEqual(30);
  });

  it('stops when duty goes up and boost stays away', async () => {
    for (const duty of [10, 20, 30, 40, 50, 60, 70, 80, 90])
      await pullAt(shop.tuner, yard, duty, { peakKpa: 56 });
    const answer = (await next()).json();
    expect(answer.advice).toMatchObject({ action: 'stop', duty: null });
  });

  it('asks for as many pulls at the accepted duty as the workshop wants', async () => {
    await shop.owner.actor.db.workshop.update({ where: { id: shop.workshopId }, data: { requiredPulls: 5 } });
    let answer = (await next()).json();
    let asks = 0;
    for (; answer.advice.action !== 'accept' && asks < 30; asks += 1) {
      await pullAt(shop.tuner, yard, answer.advice.duty);
      answer = (await next()).json();
    }
    expect(answer.advice.action).toBe('accept');
    const at = await shop.tuner.actor.db.pull.count({ where: { dutyPct: answer.advice.duty } });
    expect(at).toBeGreaterThanOrEqual(5);
  });

  it('gives no advice without a ceiling', async () => {
    const wish = await shop.desk.ask('POST', `/cars/${yard.carId}/presets`, {
      payload: { name: 'Wish', slot: 2, targetKpa: 120 },
    });
    const answer = (await next(yard.sessionId, wish.json().id)).json();
    expect(answer).toMatchObject({ ready: false, advice: null });
    expect(answer.missing).toContain('agree the ceiling of this preset');
  });

  it('gives no advice before the readiness check is passed', async () => {
    const session = await shop.tuner.ask('POST', `/visits/${yard.visitId}/tuning-sessions`, {
      payload: testSession,
    });
    const answer = (await next(session.json().id)).json();
    expect(answer).toMatchObject({ ready: false, advice: null });
    expect(answer.missing).toContain('pass the readiness check');
  });

  it('gives no advice when a limit of the car has come down below the ceiling', async () => {
    const limits = {
      overBoostCutKpa: null,
      sensorFullScaleKpa: null,
      actuatorKpa: null,
      turboKpa: 150,
      engineKpa: null,
    };
    await shop.owner.actor.db.car.update({ where: { id: yard.carId }, data: { limits } });
    const answer = (await next()).json();
    expect(answer).toMatchObject({ ready: false, advice: null });
    expect(answer.missing.join()).toContain("turbo's limit, 150 kPa");
  });

  it('gives no advice in a closed visit', async () => {
    await shop.owner.actor.db.visit.update({ where: { id: yard.visitId }, data: { stage: 'collected' } });
    expect((await next()).json()).toMatchObject({
      ready: false,
      advice: null,
      missing: ['this visit is closed'],
    });
  });

  it("refuses another car's preset, a missing preset and another workshop's session", async () => {
    const other = await fillTestYard(shop);
    expect((await next(yard.sessionId, other.presetId)).statusCode).toBe(422);
    expect((await shop.tuner.ask('GET', `/tuning-sessions/${yard.sessionId}/next-pull`)).statusCode).toBe(
      400,
    );
    const url = `/tuning-sessions/${yard.sessionId}/next-pull?presetId=${yard.presetId}`;
    expect((await shop.stranger.ask('GET', url)).statusCode).toBe(404);
  });
});

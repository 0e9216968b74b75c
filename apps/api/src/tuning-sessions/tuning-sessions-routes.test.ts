import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { openTestWorkshop, type TestWorkshop } from '../plumbing/test-workshop.js';
import { fillTestYard, parkTestCar, passingReadiness, testPreset, testSession } from './test-yard.js';

let shop: TestWorkshop;
beforeEach(async () => {
  shop = await openTestWorkshop();
});
afterEach(() => shop.close());

const ifMatch = (revision: number) => ({ headers: { 'if-match': `"${revision}"` } });
const stageOf = async (visitId: string) =>
  (await shop.tuner.actor.db.visit.findFirstOrThrow({ where: { id: visitId } })).stage;

describe('POST /visits/{id}/tuning-sessions', () => {
  it('starts a session that is not ready yet and puts the visit on test', async () => {
    const { visitId } = await parkTestCar(shop.tuner);
    const answer = await shop.tuner.ask('POST', `/visits/${visitId}/tuning-sessions`, {
      payload: testSession,
    });
    expect(answer.statusCode).toBe(201);
    expect(answer.headers['etag']).toBe('"1"');
    expect(answer.json()).toMatchObject({ ...testSession, visitId, number: 1, readiness: { passed: false } });
    expect(answer.json().readiness.items).toHaveLength(9);
    expect(await stageOf(visitId)).toBe('on-test');
    const entries = await shop.tuner.actor.db.stageEntry.findMany({ where: { visitId } });
    expect(entries.map(({ stage, by }) => [stage, by])).toEqual([['on-test', 'Tomas Tuner']]);
  });

  it('numbers sessions that start at the same moment without a gap or a double', async () => {
    const { visitId } = await parkTestCar(shop.tuner);
    const start = () =>
      shop.tuner.ask('POST', `/visits/${visitId}/tuning-sessions`, { payload: testSession });
    const numbers = (await Promise.all([start(), start(), start()])).map((answer) => answer.json().number);
    expect(numbers.sort()).toEqual([1, 2, 3]);
    const list = (await shop.desk.ask('GET', `/visits/${visitId}/tuning-sessions`)).json();
    expect(list.items.map(({ number }: { number: number }) => number)).toEqual([1, 2, 3]);
  });

  it('is not for the desk, and not in a visit that is closed or of another workshop', async () => {
    const { visitId } = await parkTestCar(shop.tuner);
    const url = `/visits/${visitId}/tuning-sessions`;
    expect((await shop.desk.ask('POST', url, { payload: testSession })).statusCode).toBe(403);
    expect((await shop.stranger.ask('POST', url, { payload: testSession })).statusCode).toBe(404);
    expect((await shop.stranger.ask('GET', url)).statusCode).toBe(404);
    await shop.tuner.actor.db.visit.update({ where: { id: visitId }, data: { stage: 'collected' } });
    const closed = await shop.tuner.ask('POST', url, { payload: testSession });
    expect(closed.statusCode).toBe(409);
    expect(closed.json()).toMatchObject({ code: 'visit-closed' });
  });

  it('names each wrong field', async () => {
    const { visitId } = await parkTestCar(shop.tuner);
    const payload = { ...testSession, placeKind: 'public road', driver: '' };
    const answer = await shop.tuner.ask('POST', `/visits/${visitId}/tuning-sessions`, { payload });
    expect(answer.statusCode).toBe(400);
    const fields = answer.json().errors.map(({ field }: { field: string }) => field);
    expect(fields.sort()).toEqual(['driver', 'placeKind']);
  });
});

describe('PATCH /tuning-sessions/{id}', () => {
  it('changes crew and air on the revision that was seen', async () => {
    const { sessionId } = await fillTestYard(shop);
    const payload = {
      driver: 'Dan Driver',
      air: { temperatureC: 8, pressureAbsKpa: 99.1, humidityPct: null },
    };
    const answer = await shop.tuner.ask('PATCH', `/tuning-sessions/${sessionId}`, { payload, ...ifMatch(2) });
    expect(answer.statusCode).toBe(200);
    expect(answer.json()).toMatchObject({ ...payload, revision: 3 });
    const stale = await shop.tuner.ask('PATCH', `/tuning-sessions/${sessionId}`, { payload, ...ifMatch(2) });
    expect(stale.statusCode).toBe(412);
    expect((await shop.tuner.ask('PATCH', `/tuning-sessions/${sessionId}`, { payload })).statusCode).toBe(
      428,
    );
    expect(
      (await shop.desk.ask('PATCH', `/tuning-sessions/${sessionId}`, { payload, ...ifMatch(3) })).statusCode,
    ).toBe(403);
    expect(
      (await shop.stranger.ask('PATCH', `/tuning-sessions/${sessionId}`, { payload, ...ifMatch(3) }))
        .statusCode,
    ).toBe(404);
  });
});

describe('PUT /tuning-sessions/{id}/readiness-check', () => {
  const answerWith = (sessionId: string, payload: object, revision: number) =>
    shop.tuner.ask('PUT', `/tuning-sessions/${sessionId}/readiness-check`, { payload, ...ifMatch(revision) });

  it('passes, says who checked and when, and is on record', async () => {
    const { sessionId } = await fillTestYard(shop);
    const session = (await shop.desk.ask('GET', `/tuning-sessions/${sessionId}`)).json();
    expect(session.readiness).toMatchObject({
      passed: true,
      missing: [],
      checkedBy: 'Tomas Tuner',
      checkedAt: '2026-11-25T09:00:00.000Z',
      overBoostCutKpa: 165,
      idleVacuumKpa: -64,
    });
    const events = await shop.tuner.actor.db.auditEvent.findMany({ where: { recordId: sessionId } });
    expect(events.map(({ action }) => action)).toContain('readiness-passed');
  });

  it('keeps an answer that does not pass and says in plain words what is open', async () => {
    const { sessionId } = await fillTestYard(shop);
    const items = passingReadiness.items.map((item) => ({ ...item, ok: item.key !== 'knock-watched' }));
    const session = (
      await answerWith(sessionId, { ...passingReadiness, items, overBoostCutKpa: 150 }, 2)
    ).json();
    expect(session.readiness.passed).toBe(false);
    expect(session.readiness.missing).toEqual([
      expect.stringContaining('knock watched'),
      expect.stringContaining('at least 5 kPa above the ceiling of Dry track (155 kPa)'),
    ]);
  });

  it('does not pass an over-boost cut above what the car can stand', async () => {
    const { sessionId } = await fillTestYard(shop);
    const session = (await answerWith(sessionId, { ...passingReadiness, overBoostCutKpa: 171 }, 2)).json();
    expect(session.readiness).toMatchObject({ passed: false });
    expect(session.readiness.missing[0]).toContain("engine's limit, 170 kPa");
  });

  it('never judges the idle vacuum', async () => {
    const { sessionId } = await fillTestYard(shop);
    const session = (await answerWith(sessionId, { ...passingReadiness, idleVacuumKpa: -10 }, 2)).json();
    expect(session.readiness.passed).toBe(true);
  });

  it('is taken away by a ceiling that is agreed within 5 kPa of the cut afterwards', async () => {
    const { sessionId, carId } = await fillTestYard(shop);
    await shop.tuner.ask('POST', `/cars/${carId}/presets`, {
      payload: { ...testPreset, name: 'Hot', slot: 2, ceilingKpa: 161 },
    });
    const session = (await shop.tuner.ask('GET', `/tuning-sessions/${sessionId}`)).json();
    expect(session.readiness.passed).toBe(false);
    expect(session.readiness.missing[0]).toContain('ceiling of Hot (161 kPa)');
  });

  it('refuses an unknown question, one answered twice, a missing and a stale revision, the desk and strangers', async () => {
    const { sessionId } = await fillTestYard(shop);
    const url = `/tuning-sessions/${sessionId}/readiness-check`;
    const unknown = await answerWith(
      sessionId,
      { ...passingReadiness, items: [{ key: 'luck', ok: true }] },
      2,
    );
    expect(unknown.statusCode).toBe(400);
    const [first] = passingReadiness.items;
    const twice = await answerWith(sessionId, { ...passingReadiness, items: [first, first] }, 2);
    expect(twice.json()).toMatchObject({ code: 'invalid-request', errors: [{ field: 'items' }] });
    const payload = passingReadiness;
    expect((await shop.tuner.ask('PUT', url, { payload })).statusCode).toBe(428);
    expect((await answerWith(sessionId, payload, 1)).statusCode).toBe(412);
    expect((await shop.desk.ask('PUT', url, { payload, ...ifMatch(2) })).statusCode).toBe(403);
    expect((await shop.stranger.ask('PUT', url, { payload, ...ifMatch(2) })).statusCode).toBe(404);
  });
});

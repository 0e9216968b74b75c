import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { openTestWorkshop, type TestWorkshop } from '../plumbing/test-workshop.js';
import {
  fillTestYard,
  pullAt,
  testPreset,
  testSession,
  type TestYard,
} from '../tuning-sessions/test-yard.js';

let shop: TestWorkshop;
let yard: TestYard;
beforeEach(async () => {
  shop = await openTestWorkshop();
  yard = await fillTestYard(shop);
});
afterEach(() => shop.close());

const post = (payload: object, more: { headers?: Record<string, string> } = {}) =>
  shop.tuner.ask('POST', `/tuning-sessions/${yard.sessionId}/pulls`, {
    payload: { presetId: yard.presetId, dutyPct: 10, peakKpa: 57.2, ...payload },
    ...more,
  });
const codesOf = (reasons: { code: string }[]) => reasons.map(({ code }) => code);

describe('POST /tuning-sessions/{id}/pulls', () => {
  it('records a pull with the next number, the preset revision and who recorded it', async () => {
    const answer = await post({ gear: 4, heatSoaked: true, note: 'clean' });
    expect(answer.statusCode).toBe(201);
    expect(answer.json()).toMatchObject({
      number: 1,
      presetRevision: 1,
      dutyPct: 10,
      peakKpa: 57.2,
      gear: 4,
      heatSoaked: true,
      note: 'clean',
      source: 'typed',
      usable: true,
      warnings: [],
      voidedAt: null,
      recordedBy: 'Tomas Tuner',
      recordedAt: '2026-11-25T09:00:00.000Z',
    });
    expect((await post({ dutyPct: 20 })).json().number).toBe(2);
    const events = await shop.tuner.actor.db.auditEvent.findMany({ where: { action: 'pull-recorded' } });
    expect(events).toHaveLength(2);
  });

  it('keeps the moment at which a pull was driven when it is sent later', async () => {
    const recordedAt = '2026-11-25T08:12:00.000Z';
    expect((await post({ recordedAt })).json().recordedAt).toBe(recordedAt);
  });

  describe('driven on a revision that is no longer the newest', () => {
    const change = (payload: object, revision: number) =>
      shop.owner.ask('PATCH', `/presets/${yard.presetId}`, {
        payload: { reason: 'customer called', ...payload },
        headers: { 'if-match': `"${revision}"` },
      });

    it('refuses it where the goal is another one, tells both goals, and takes it once a person chose the new one', async () => {
      await change({ targetKpa: 130, ceilingKpa: 145 }, 1);
      const answer = await post({ presetRevision: 1 });
      expect(answer.statusCode).toBe(409);
      expect(answer.json()).toMatchObject({
        code: 'goal-changed',
        detail: expect.stringMatching(
          /it was target 140\.0\skPa ± 4\.0\skPa, ceiling 155\.0\skPa \(revision 1\), it is target 130\.0\skPa ± 4\.0\skPa, ceiling 145\.0\skPa \(revision 2\)$/,
        ),
        errors: [{ field: 'presetRevision' }],
      });
      expect(await shop.tuner.actor.db.pull.count()).toBe(0);
      const chosen = await post({ presetRevision: 2 });
      expect(chosen.json()).toMatchObject({ number: 1, presetRevision: 2 });
    });

    it('takes it for the revision that was seen where only the rest of the preset is new', async () => {
      await change({ purpose: 'track days, any tyres' }, 1);
      expect((await post({ presetRevision: 1 })).json()).toMatchObject({ presetRevision: 1 });
      expect((await post({})).json()).toMatchObject({ presetRevision: 2 });
    });

    it('refuses a revision that never was', async () => {
      const answer = await post({ presetRevision: 7 });
      expect(answer.json()).toMatchObject({ code: 'invalid-request', errors: [{ field: 'presetRevision' }] });
    });
  });

  it('gives pulls that come in at the same moment one number each and loses none', async () => {
    const answers = await Promise.all(
      Array.from({ length: 12 }, (_, index) => post({ peakKpa: 50 + index })),
    );
    expect(answers.every((answer) => answer.statusCode === 201)).toBe(true);
    const list = (await shop.desk.ask('GET', `/tuning-sessions/${yard.sessionId}/pulls`)).json().items;
    const numbers = list
      .map(({ number }: { number: number }) => number)
      .sort((a: number, b: number) => a - b);
    expect(numbers).toEqual(Array.from({ length: 12 }, (_, index) => index + 1));
    const peaks = new Set(list.map(({ peakKpa }: { peakKpa: number }) => peakKpa));
    expect(peaks.size).toBe(12);
  });

  it('makes one pull of one that a phone sends again and again', async () => {
    const headers = { 'idempotency-key': 'pull-of-the-morning-1' };
    const first = await post({}, { headers });
    const again = await post({}, { headers });
    expect(again.json()).toEqual(first.json());
    expect(await shop.tuner.actor.db.pull.count()).toBe(1);
  });

  it('runs numbers anew for another preset', async () => {
    await post({});
    const other = await shop.tuner.ask('POST', `/cars/${yard.carId}/presets`, {
      payload: { ...testPreset, name: 'Wet', slot: 2 },
    });
    expect((await post({ presetId: other.json().id })).json().number).toBe(1);
    const wet = (
      await shop.tuner.ask('GET', `/tuning-sessions/${yard.sessionId}/pulls?presetId=${other.json().id}`)
    ).json();
    expect(wet.items).toHaveLength(1);
  });

  it('records a peak past the ceiling and a duty above the step limit honestly, with a warning each', async () => {
    await post({ dutyPct: 10 });
    const pull = (await post({ dutyPct: 25, peakKpa: 158 })).json();
    expect(pull).toMatchObject({ peakKpa: 158, dutyPct: 25, usable: true });
    expect(codesOf(pull.warnings)).toEqual(['past-ceiling', 'over-step-limit']);
    expect((await post({ dutyPct: 35 })).json().warnings).toEqual([]);
  });

  it('warns of a gate hold raised above the step limit', async () => {
    await post({ holdPct: 50 });
    const pull = (await post({ holdPct: 65 })).json();
    expect(codesOf(pull.warnings)).toEqual(['hold-over-step-limit']);
    expect(pull.warnings[0].text).toContain('15 points');
    expect((await post({ holdPct: 75 })).json().warnings).toEqual([]);
  });

  it.each([
    [{ dutyPct: 91 }, 422, 'duty-out-of-range', 'dutyPct'],
    [{ dutyPct: 10.5 }, 422, 'duty-out-of-range', 'dutyPct'],
    [{ holdPct: 42 }, 422, 'hold-out-of-range', 'holdPct'],
    [{ dutyPct: 101 }, 400, 'invalid-request', 'dutyPct'],
    [{ peakKpa: '1,4 bar' }, 400, 'invalid-request', 'peakKpa'],
    [{ presetId: 'that one' }, 400, 'invalid-request', 'presetId'],
  ])('refuses %j with %i %s, naming the field, and records nothing', async (change, status, code, field) => {
    const answer = await post(change);
    expect(answer.statusCode).toBe(status);
    expect(answer.json()).toMatchObject({ code, errors: [{ field }] });
    expect(await shop.tuner.actor.db.pull.count()).toBe(0);
  });

  it('refuses a preset without a ceiling', async () => {
    const open = await shop.desk.ask('POST', `/cars/${yard.carId}/presets`, {
      payload: { name: 'Wish', slot: 2, targetKpa: 120 },
    });
    const answer = await post({ presetId: open.json().id });
    expect(answer.statusCode).toBe(409);
    expect(answer.json()).toMatchObject({ code: 'ceiling-missing' });
  });

  it('refuses before the readiness check is passed and says what is open', async () => {
    const session = await shop.tuner.ask('POST', `/visits/${yard.visitId}/tuning-sessions`, {
      payload: testSession,
    });
    const payload = { presetId: yard.presetId, dutyPct: 10, peakKpa: 57 };
    const answer = await shop.tuner.ask('POST', `/tuning-sessions/${session.json().id}/pulls`, { payload });
    expect(answer.statusCode).toBe(409);
    expect(answer.json()).toMatchObject({ code: 'readiness-not-passed' });
    expect(answer.json().detail).toContain('over-boost cut is not set');
  });

  it('refuses a preset of another car, and a car without a controller', async () => {
    const other = await fillTestYard(shop);
    const strange = await post({ presetId: other.presetId });
    expect(strange.statusCode).toBe(422);
    expect(strange.json()).toMatchObject({ code: 'preset-not-of-this-car', errors: [{ field: 'presetId' }] });
    await shop.tuner.actor.db.car.update({ where: { id: yard.carId }, data: { controllerId: null } });
    expect((await post({})).json()).toMatchObject({
      code: 'invalid-request',
      errors: [{ field: 'dutyPct' }],
    });
  });

  it('refuses in a closed visit, from the desk, and from another workshop', async () => {
    const url = `/tuning-sessions/${yard.sessionId}/pulls`;
    const payload = { presetId: yard.presetId, dutyPct: 10, peakKpa: 57 };
    expect((await shop.desk.ask('POST', url, { payload })).statusCode).toBe(403);
    expect((await shop.stranger.ask('POST', url, { payload })).statusCode).toBe(404);
    expect((await shop.stranger.ask('GET', url)).statusCode).toBe(404);
    await shop.tuner.actor.db.visit.update({ where: { id: yard.visitId }, data: { stage: 'ready' } });
    expect((await post({})).json()).toMatchObject({ code: 'visit-closed' });
  });
});

describe('POST /pulls/{id}/void', () => {
  it('takes a pull out of the advice with a reason, keeps it in the book and its number with it', async () => {
    const first = await pullAt(shop.tuner, yard, 10);
    const answer = await shop.tuner.ask('POST', `/pulls/${first.id}/void`, {
      payload: { reason: 'wrong gear' },
    });
    expect(answer.statusCode).toBe(200);
    expect(answer.json()).toMatchObject({ id: first.id, peakKpa: first.peakKpa, voidReason: 'wrong gear' });
    expect(answer.json().voidedAt).toBe('2026-11-25T09:00:00.000Z');
    expect((await pullAt(shop.tuner, yard, 10)).number).toBe(2);
    const next = await shop.tuner.ask(
      'GET',
      `/tuning-sessions/${yard.sessionId}/next-pull?presetId=${yard.presetId}`,
    );
    expect(next.json().advice.duty).toBe(20);
  });

  it('refuses a second time, without a reason, from the desk, from another workshop and in a closed visit', async () => {
    const { id } = await pullAt(shop.tuner, yard, 10);
    const url = `/pulls/${id}/void`;
    const payload = { reason: 'lifted' };
    expect((await shop.tuner.ask('POST', url, { payload: { reason: ' ' } })).statusCode).toBe(400);
    expect((await shop.desk.ask('POST', url, { payload })).statusCode).toBe(403);
    expect((await shop.stranger.ask('POST', url, { payload })).statusCode).toBe(404);
    expect((await shop.tuner.ask('POST', url, { payload })).statusCode).toBe(200);
    const second = await shop.tuner.ask('POST', url, { payload });
    expect(second.statusCode).toBe(409);
    expect(second.json()).toMatchObject({
      code: 'void-already',
      detail: 'pull 1 was voided before by Tomas Tuner: lifted',
    });
    const late = await pullAt(shop.tuner, yard, 10);
    await shop.tuner.actor.db.visit.update({ where: { id: yard.visitId }, data: { stage: 'collected' } });
    const closed = await shop.tuner.ask('POST', `/pulls/${late.id}/void`, { payload });
    expect(closed.json()).toMatchObject({ code: 'visit-closed' });
  });
});

describe('POST /pulls/{id}/found-sound', () => {
  const mark = (id: string, payload: object = { note: 'hoses, gate and solenoid in order' }) =>
    shop.tuner.ask('POST', `/pulls/${id}/found-sound`, { payload });

  it('marks the pull with when, who and what was looked at, and changes nothing else of it', async () => {
    const before = await pullAt(shop.tuner, yard, 10);
    expect(before).toMatchObject({ foundSoundAt: null, foundSoundNote: null, foundSoundBy: null });
    const answer = await mark(before.id);
    expect(answer.statusCode).toBe(200);
    expect(answer.json()).toEqual({
      ...before,
      foundSoundAt: '2026-11-25T09:00:00.000Z',
      foundSoundNote: 'hoses, gate and solenoid in order',
      foundSoundBy: 'Tomas Tuner',
    });
    const events = await shop.tuner.actor.db.auditEvent.findMany({ where: { action: 'car-found-sound' } });
    expect(events).toMatchObject([
      {
        noun: 'pull',
        recordId: before.id,
        by: 'Tomas Tuner',
        summary: 'looked the car over after pull 1 and found it sound: hoses, gate and solenoid in order',
      },
    ]);
  });

  it('needs no note, and lets the first word stand where it is said again', async () => {
    const { id } = await pullAt(shop.tuner, yard, 10);
    expect((await mark(id, {})).json()).toMatchObject({ foundSoundNote: '' });
    const again = await mark(id, { note: 'looked once more' });
    expect(again.statusCode).toBe(200);
    expect(again.json()).toMatchObject({ foundSoundNote: '' });
    expect(await shop.tuner.actor.db.auditEvent.count({ where: { action: 'car-found-sound' } })).toBe(1);
  });

  it('refuses a void pull, from the desk, from another workshop and in a closed visit', async () => {
    const { id } = await pullAt(shop.tuner, yard, 10);
    const url = `/pulls/${id}/found-sound`;
    expect((await shop.desk.ask('POST', url, { payload: {} })).statusCode).toBe(403);
    expect((await shop.stranger.ask('POST', url, { payload: {} })).statusCode).toBe(404);
    await shop.tuner.ask('POST', `/pulls/${id}/void`, { payload: { reason: 'hose was off' } });
    const refused = await mark(id);
    expect(refused.statusCode).toBe(409);
    expect(refused.json()).toMatchObject({
      code: 'void-already',
      detail: 'pull 1 was voided before by Tomas Tuner: hose was off',
    });
    const late = await pullAt(shop.tuner, yard, 10);
    await shop.tuner.actor.db.visit.update({ where: { id: yard.visitId }, data: { stage: 'collected' } });
    expect((await mark(late.id)).json()).toMatchObject({ code: 'visit-closed' });
  });
});

import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { openTestWorkshop, type TestWorkshop } from '../plumbing/test-workshop.js';
import {
  fillTestYard,
  parkTestCar,
  proveTestPreset,
  pullAt,
  testPreset,
} from '../tuning-sessions/test-yard.js';

let shop: TestWorkshop;
beforeEach(async () => {
  shop = await openTestWorkshop();
});
afterEach(() => shop.close());

const ifMatch = (revision: number) => ({ headers: { 'if-match': `"${revision}"` } });
const nobody = '00000000-0000-7000-8000-000000000000';

describe('POST /cars/{id}/presets', () => {
  it('enters a draft and says what is missing', async () => {
    const { carId } = await parkTestCar(shop.tuner);
    const answer = await shop.tuner.ask('POST', `/cars/${carId}/presets`, { payload: testPreset });
    expect(answer.statusCode).toBe(201);
    expect(answer.headers['etag']).toBe('"1"');
    expect(answer.json()).toMatchObject({
      ...testPreset,
      carId,
      state: 'draft',
      missing: ['no pull is on record yet'],
      revision: 1,
    });
    const events = await shop.tuner.actor.db.auditEvent.findMany({ where: { recordId: answer.json().id } });
    expect(events.map(({ action, by }) => ({ action, by }))).toEqual([
      { action: 'preset-created', by: 'Tomas Tuner' },
    ]);
  });

  it('replaces the preset that stood in the slot, which stays readable', async () => {
    const { carId } = await parkTestCar(shop.tuner);
    const first = await shop.tuner.ask('POST', `/cars/${carId}/presets`, { payload: testPreset });
    await shop.tuner.ask('POST', `/cars/${carId}/presets`, { payload: { ...testPreset, name: 'Newer' } });
    const list = (await shop.tuner.ask('GET', `/cars/${carId}/presets`)).json();
    expect(list.items.map(({ name, state }: { name: string; state: string }) => [name, state])).toEqual([
      ['Dry track', 'replaced'],
      ['Newer', 'draft'],
    ]);
    expect((await shop.tuner.ask('GET', `/presets/${first.json().id}`)).statusCode).toBe(200);
  });

  it('leaves one standing preset in a slot when two people fill it at the same moment', async () => {
    const { carId } = await parkTestCar(shop.tuner);
    const enter = (name: string) =>
      shop.tuner.ask('POST', `/cars/${carId}/presets`, { payload: { ...testPreset, name } });
    const answers = await Promise.all(['A', 'B', 'C'].map(enter));
    expect(answers.map((answer) => answer.statusCode)).toEqual([201, 201, 201]);
    const standing = await shop.tuner.actor.db.preset.count({ where: { carId, replacedAt: null } });
    expect(standing).toBe(1);
  });

  it('refuses a ceiling above the lowest limit and says which binds, and writes nothing', async () => {
    const { carId } = await parkTestCar(shop.tuner);
    const payload = { ...testPreset, ceilingKpa: 171 };
    const answer = await shop.tuner.ask('POST', `/cars/${carId}/presets`, { payload });
    expect(answer.statusCode).toBe(422);
    expect(answer.json()).toMatchObject({
      code: 'ceiling-above-car-limit',
      errors: [{ field: 'ceilingKpa' }],
    });
    expect(answer.json().detail).toContain("engine's limit, 170 kPa");
    expect(await shop.tuner.actor.db.preset.count({ where: { carId } })).toBe(0);
  });

  it.each([
    [{ ceilingKpa: 130 }, 422, 'ceiling-not-above-target', 'ceilingKpa'],
    [{ slot: 4 }, 400, 'invalid-request', 'slot'],
    [{ dutyPct: 91 }, 422, 'duty-out-of-range', 'dutyPct'],
    [{ gateHoldPct: 42 }, 422, 'hold-out-of-range', 'gateHoldPct'],
    [{ targetKpa: 'high' }, 400, 'invalid-request', 'targetKpa'],
  ])('refuses %j with %i %s, naming the field', async (change, status, code, field) => {
    const { carId } = await parkTestCar(shop.tuner);
    const answer = await shop.tuner.ask('POST', `/cars/${carId}/presets`, {
      payload: { ...testPreset, ...change },
    });
    expect(answer.statusCode).toBe(status);
    expect(answer.json()).toMatchObject({ code, errors: [{ field }] });
  });

  it('lets the desk enter a wish but no tuning value', async () => {
    const { carId } = await parkTestCar(shop.tuner);
    const wish = { name: 'Winter', slot: 2, targetKpa: 110 };
    const entered = await shop.desk.ask('POST', `/cars/${carId}/presets`, { payload: wish });
    expect(entered.statusCode).toBe(201);
    const refused = await shop.desk.ask('POST', `/cars/${carId}/presets`, {
      payload: { ...wish, slot: 3, ceilingKpa: 130 },
    });
    expect(refused.statusCode).toBe(403);
    expect(refused.json()).toMatchObject({ code: 'not-allowed', errors: [{ field: 'ceilingKpa' }] });
    const wider = { ...wish, slot: 3, toleranceKpa: 20 };
    const widened = await shop.desk.ask('POST', `/cars/${carId}/presets`, { payload: wider });
    expect(widened.json()).toMatchObject({ code: 'not-allowed', errors: [{ field: 'toleranceKpa' }] });
    const onTop = await shop.desk.ask('POST', `/cars/${carId}/presets`, { payload: wish });
    expect(onTop.statusCode).toBe(409);
  });

  it('does not find a car of another workshop, and wants somebody signed in', async () => {
    const { carId } = await parkTestCar(shop.tuner);
    const payload = testPreset;
    expect((await shop.stranger.ask('POST', `/cars/${carId}/presets`, { payload })).statusCode).toBe(404);
    const unknown = await shop.app.inject({ method: 'POST', url: `/api/v1/cars/${carId}/presets`, payload });
    expect(unknown.statusCode).toBe(401);
  });
});

describe('GET /cars/{id}/presets and GET /presets/{id}', () => {
  it('pages through the presets in slot order', async () => {
    const { carId } = await parkTestCar(shop.tuner);
    for (const slot of [3, 1, 2]) {
      await shop.tuner.ask('POST', `/cars/${carId}/presets`, { payload: { ...testPreset, slot } });
    }
    const first = (await shop.desk.ask('GET', `/cars/${carId}/presets?limit=2`)).json();
    expect(first.items.map(({ slot }: { slot: number }) => slot)).toEqual([1, 2]);
    const rest = (
      await shop.desk.ask('GET', `/cars/${carId}/presets?limit=2&cursor=${first.nextCursor}`)
    ).json();
    expect(rest.items.map(({ slot }: { slot: number }) => slot)).toEqual([3]);
    expect(rest.nextCursor).toBeNull();
  });

  it('moves on test with the first pull and to proven once the accepted duty is stored', async () => {
    const yard = await fillTestYard(shop);
    const state = async () => (await shop.tuner.ask('GET', `/presets/${yard.presetId}`)).json();
    await pullAt(shop.tuner, yard, 10);
    expect(await state()).toMatchObject({
      state: 'on-test',
      missing: ['no duty is stored yet: the advice has not accepted one'],
    });
    const dutyPct = await proveTestPreset(shop.tuner, yard);
    expect(await state()).toMatchObject({ state: 'proven', dutyPct, missing: ['it is not signed off yet'] });
  });

  it("finds nothing of another workshop's, and nothing that is not there", async () => {
    const yard = await fillTestYard(shop);
    for (const url of [
      `/cars/${yard.carId}/presets`,
      `/presets/${yard.presetId}`,
      `/presets/${yard.presetId}/revisions`,
    ]) {
      expect((await shop.stranger.ask('GET', url)).statusCode).toBe(404);
    }
    expect((await shop.tuner.ask('GET', `/presets/${nobody}`)).json()).toMatchObject({ code: 'not-found' });
  });
});

describe('PATCH /presets/{id}', () => {
  it('writes a new revision and leaves the older one as it was', async () => {
    const { presetId } = await fillTestYard(shop);
    const payload = { dutyPct: 30, reason: 'first guess' };
    const answer = await shop.owner.ask('PATCH', `/presets/${presetId}`, { payload, ...ifMatch(1) });
    expect(answer.statusCode).toBe(200);
    expect(answer.headers['etag']).toBe('"2"');
    const revisions = (await shop.desk.ask('GET', `/presets/${presetId}/revisions`)).json().items;
    expect(revisions).toMatchObject([
      { revision: 2, dutyPct: 30, reason: 'first guess', madeBy: 'Olga Owner' },
      { revision: 1, dutyPct: null, madeBy: 'Tomas Tuner' },
    ]);
  });

  it('wants the revision that was seen, and refuses a stale one', async () => {
    const { presetId } = await fillTestYard(shop);
    const payload = { name: 'Dry' };
    expect((await shop.tuner.ask('PATCH', `/presets/${presetId}`, { payload })).statusCode).toBe(428);
    await shop.tuner.ask('PATCH', `/presets/${presetId}`, { payload, ...ifMatch(1) });
    const stale = await shop.tuner.ask('PATCH', `/presets/${presetId}`, {
      payload: { name: 'Late' },
      ...ifMatch(1),
    });
    expect(stale.statusCode).toBe(412);
    expect(stale.json()).toMatchObject({ code: 'changed-meanwhile' });
  });

  it('lets exactly one of several changes made on the same revision through', async () => {
    const { presetId } = await fillTestYard(shop);
    const change = (dutyPct: number) =>
      shop.tuner.ask('PATCH', `/presets/${presetId}`, { payload: { dutyPct }, ...ifMatch(1) });
    const statuses = (await Promise.all([10, 20, 30, 40].map(change))).map((answer) => answer.statusCode);
    expect(statuses.sort()).toEqual([200, 412, 412, 412]);
    expect((await shop.tuner.ask('GET', `/presets/${presetId}/revisions`)).json().items).toHaveLength(2);
  });

  it('lets the desk change name and purpose, and no tuning value', async () => {
    const { presetId } = await fillTestYard(shop);
    const named = await shop.desk.ask('PATCH', `/presets/${presetId}`, {
      payload: { name: 'Summer' },
      ...ifMatch(1),
    });
    expect(named.statusCode).toBe(200);
    for (const change of [{ dutyPct: 20 }, { ceilingKpa: 160 }, { targetKpa: 141 }, { slot: 2 }]) {
      const refused = await shop.desk.ask('PATCH', `/presets/${presetId}`, {
        payload: change,
        ...ifMatch(2),
      });
      expect(refused.statusCode).toBe(403);
    }
    expect((await shop.desk.ask('GET', `/presets/${presetId}`)).json()).toMatchObject({
      revision: 2,
      dutyPct: null,
    });
  });

  it('refuses the slot of another preset, and any change to a replaced one', async () => {
    const yard = await fillTestYard(shop);
    await shop.tuner.ask('POST', `/cars/${yard.carId}/presets`, { payload: { ...testPreset, slot: 2 } });
    const moved = await shop.tuner.ask('PATCH', `/presets/${yard.presetId}`, {
      payload: { slot: 2 },
      ...ifMatch(1),
    });
    expect(moved.statusCode).toBe(409);
    expect(moved.json()).toMatchObject({ code: 'conflict', errors: [{ field: 'slot' }] });
    await shop.tuner.ask('POST', `/cars/${yard.carId}/presets`, { payload: testPreset });
    const late = await shop.tuner.ask('PATCH', `/presets/${yard.presetId}`, {
      payload: { name: 'X' },
      ...ifMatch(1),
    });
    expect(late.json()).toMatchObject({ code: 'conflict' });
  });

  it("does not find another workshop's preset", async () => {
    const { presetId } = await fillTestYard(shop);
    const answer = await shop.stranger.ask('PATCH', `/presets/${presetId}`, {
      payload: { name: 'X' },
      ...ifMatch(1),
    });
    expect(answer.statusCode).toBe(404);
  });
});

import { signOffKeys } from '@pullbook/contracts';
import { createHash } from 'node:crypto';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { openTestWorkshop, type TestWorkshop } from '../plumbing/test-workshop.js';
import {
  fillTestYard,
  proveTestPreset,
  pullAt,
  testPreset,
  testSession,
  type TestYard,
} from '../tuning-sessions/test-yard.js';

import { sealContent } from './seal.js';

let shop: TestWorkshop;
let yard: TestYard;
beforeEach(async () => {
  shop = await openTestWorkshop();
  yard = await fillTestYard(shop);
});
afterEach(() => shop.close());

const allDone = signOffKeys.map((key) => ({ key, done: true }));
const sign = (more: object = {}, person = shop.owner) =>
  person.ask('POST', `/visits/${yard.visitId}/sign-off`, {
    payload: { items: allDone, presetIds: [yard.presetId], signedName: 'Olga Owner', ...more },
  });
const read = async () => (await shop.desk.ask('GET', `/visits/${yard.visitId}/sign-off`)).json();

describe('GET /visits/{id}/sign-off', () => {
  it('fills in from the data what holds a preset back', async () => {
    await pullAt(shop.tuner, yard, 10);
    const signOff = await read();
    expect(signOff).toMatchObject({ state: 'open', signedName: null, sealSha256: null, sealHolds: null });
    expect(signOff.items).toHaveLength(signOffKeys.length);
    expect(signOff.presets).toMatchObject([
      {
        presetId: yard.presetId,
        accepted: false,
        usablePullCount: 1,
        meanPeakKpa: null,
        provingPullNumbers: [],
        missing: ['the advice has not accepted a duty in this visit'],
      },
    ]);
  });

  it('shows mean, range and proving pulls of an accepted preset', async () => {
    const dutyPct = await proveTestPreset(shop.tuner, yard);
    const [evidence] = (await read()).presets;
    expect(evidence).toMatchObject({
      dutyPct,
      accepted: true,
      ceilingKept: true,
      heatSoakedPull: true,
      missing: [],
    });
    expect(evidence.lowestPeakKpa).toBeLessThanOrEqual(evidence.meanPeakKpa);
    expect(evidence.highestPeakKpa).toBeLessThanOrEqual(testPreset.ceilingKpa);
    expect(evidence.provingPullNumbers.length).toBeGreaterThan(0);
  });

  it('tells that the car was looked over and found sound, until the pull is voided', async () => {
    const first = await pullAt(shop.tuner, yard, 10);
    const second = await pullAt(shop.tuner, yard, 20);
    const foundSound = (id: string, note: string) =>
      shop.tuner.ask('POST', `/pulls/${id}/found-sound`, { payload: { note } });
    await foundSound(first.id, '');
    await foundSound(second.id, 'gate free');
    const looks = [
      { afterPull: 1, at: '2026-11-25T09:00:00.000Z', note: '', by: shop.tuner.actor.name },
      { afterPull: 2, at: '2026-11-25T09:00:00.000Z', note: 'gate free', by: shop.tuner.actor.name },
    ];
    expect((await read()).presets[0].foundSound).toEqual(looks);
    await shop.tuner.ask('POST', `/pulls/${second.id}/void`, { payload: { reason: 'throttle lifted' } });
    expect((await read()).presets[0].foundSound).toEqual(looks.slice(0, 1));
  });

  it("does not find another workshop's visit", async () => {
    expect((await shop.stranger.ask('GET', `/visits/${yard.visitId}/sign-off`)).statusCode).toBe(404);
  });
});

describe('POST /visits/{id}/sign-off', () => {
  it('seals the visit, moves it to ready and marks the preset', async () => {
    const dutyPct = await proveTestPreset(shop.tuner, yard);
    const answer = await sign();
    expect(answer.statusCode).toBe(201);
    expect(answer.json()).toMatchObject({
      state: 'sealed',
      sealHolds: true,
      signedName: 'Olga Owner',
      signedBy: 'Olga Owner',
      signedAt: '2026-11-25T09:00:00.000Z',
      presets: [{ presetId: yard.presetId, dutyPct, accepted: true }],
    });
    const { db } = shop.owner.actor;
    expect((await db.visit.findFirstOrThrow({ where: { id: yard.visitId } })).stage).toBe('ready');
    const preset = (await shop.tuner.ask('GET', `/presets/${yard.presetId}`)).json();
    expect(preset).toMatchObject({ state: 'signed-off', missing: [] });
    const kept = await db.signOff.findFirstOrThrow();
    expect(createHash('sha256').update(kept.sealedText).digest('hex')).toBe(answer.json().sealSha256);
    const pulls = await db.pull.findMany({ orderBy: { number: 'asc' } });
    expect(JSON.parse(kept.sealedText).pulls.map(({ id }: { id: string }) => id)).toEqual(
      pulls.map(({ id }) => id),
    );
  });

  it('refuses while the advice accepts no duty, and changes nothing', async () => {
    await pullAt(shop.tuner, yard, 10);
    const answer = await sign();
    expect(answer.statusCode).toBe(409);
    expect(answer.json()).toMatchObject({ code: 'preset-not-accepted', errors: [{ field: 'presetIds.0' }] });
    expect(await shop.owner.actor.db.signOff.count()).toBe(0);
    expect((await read()).state).toBe('open');
  });

  it('refuses when another duty than the accepted one is stored', async () => {
    const dutyPct = await proveTestPreset(shop.tuner, yard);
    await shop.tuner.ask('PATCH', `/presets/${yard.presetId}`, {
      payload: { dutyPct: dutyPct - 1 },
      headers: { 'if-match': '"2"' },
    });
    const answer = await sign();
    expect(answer.json()).toMatchObject({ code: 'preset-not-accepted' });
    expect(answer.json().detail).toContain(`is not the accepted one (${dutyPct} %)`);
  });

  it('refuses when a pull at the accepted duty passed the ceiling', async () => {
    const dutyPct = await proveTestPreset(shop.tuner, yard);
    await shop.tuner.ask('PATCH', `/presets/${yard.presetId}`, {
      payload: { ceilingKpa: 140.5 },
      headers: { 'if-match': '"2"' },
    });
    await pullAt(shop.tuner, yard, dutyPct, { peakKpa: 140.9 });
    const answer = await sign();
    expect(answer.statusCode).toBe(409);
    expect(answer.json()).toMatchObject({ code: 'preset-not-accepted' });
  });

  it('refuses while items of the checklist are not done and names each', async () => {
    await proveTestPreset(shop.tuner, yard);
    const items = allDone.filter(({ key }) => key !== 'no-fault-lamps');
    const answer = await sign({
      items: items.map((item) => ({ ...item, done: item.key !== 'lines-and-clamps-seen' })),
    });
    expect(answer.statusCode).toBe(409);
    expect(answer.json().code).toBe('sign-off-incomplete');
    expect(answer.json().errors.map(({ field }: { field: string }) => field)).toEqual([
      'items.lines-and-clamps-seen',
      'items.no-fault-lamps',
    ]);
  });

  it('refuses a preset of another car, a signature without a name, the desk and strangers', async () => {
    await proveTestPreset(shop.tuner, yard);
    const other = await fillTestYard(shop);
    expect((await sign({ presetIds: [other.presetId] })).json()).toMatchObject({
      code: 'preset-not-of-this-car',
      errors: [{ field: 'presetIds.0' }],
    });
    expect((await sign({ signedName: ' ' })).statusCode).toBe(400);
    expect((await sign({}, shop.desk)).statusCode).toBe(403);
    expect((await sign({}, shop.stranger)).statusCode).toBe(404);
  });

  it('seals once, however many sign at the same moment', async () => {
    await proveTestPreset(shop.tuner, yard);
    const answers = await Promise.all([sign(), sign({}, shop.tuner), sign()]);
    expect(answers.map((answer) => answer.statusCode).sort()).toEqual([201, 409, 409]);
    expect((await sign()).json()).toMatchObject({ code: 'already-signed' });
    expect(await shop.owner.actor.db.signOff.count()).toBe(1);
  });

  it('closes the visit: no pull, void, session, readiness or setting of it can be changed any more', async () => {
    await proveTestPreset(shop.tuner, yard);
    const pull = await shop.tuner.actor.db.pull.findFirstOrThrow();
    await sign();
    const { tuner } = shop;
    const session = `/tuning-sessions/${yard.sessionId}`;
    const ifMatch = { headers: { 'if-match': '"2"' } };
    const answers = await Promise.all([
      tuner.ask('POST', `${session}/pulls`, {
        payload: { presetId: yard.presetId, dutyPct: 10, peakKpa: 57 },
      }),
      tuner.ask('POST', `/pulls/${pull.id}/void`, { payload: { reason: 'second thoughts' } }),
      tuner.ask('PATCH', session, { payload: { driver: 'Somebody' }, ...ifMatch }),
      tuner.ask('PUT', `${session}/readiness-check`, {
        payload: { items: [], overBoostCutKpa: null },
        ...ifMatch,
      }),
      tuner.ask('POST', `/visits/${yard.visitId}/tuning-sessions`, { payload: testSession }),
      tuner.ask('PATCH', `/presets/${yard.presetId}`, { payload: { dutyPct: 40 }, ...ifMatch }),
    ]);
    expect(answers.map((answer) => answer.json().code)).toEqual(Array(6).fill('visit-closed'));
  });

  it('lets a signed-off preset be worked on again in a new visit', async () => {
    await proveTestPreset(shop.tuner, yard);
    await sign();
    await shop.tuner.actor.db.visit.create({ data: { number: 9001, carId: yard.carId, stage: 'arrived' } });
    const answer = await shop.tuner.ask('PATCH', `/presets/${yard.presetId}`, {
      payload: { targetKpa: 142 },
      headers: { 'if-match': '"2"' },
    });
    expect(answer.statusCode).toBe(200);
    expect((await read()).presets[0]).toMatchObject({ revision: 2, targetKpa: 140 });
  });

  it('seals the looks at the car, and still opens what was sealed before they were told', async () => {
    await proveTestPreset(shop.tuner, yard);
    const { db } = shop.owner.actor;
    const { id: pullId, number } = await db.pull.findFirstOrThrow({ orderBy: { number: 'desc' } });
    await shop.tuner.ask('POST', `/pulls/${pullId}/found-sound`, { payload: { note: 'hoses on' } });
    await sign();
    expect(await read()).toMatchObject({
      sealHolds: true,
      presets: [{ foundSound: [{ afterPull: number, note: 'hoses on' }] }],
    });
    const { id, sealedText } = await db.signOff.findFirstOrThrow();
    const before = JSON.parse(sealedText);
    for (const preset of before.presets) delete preset.foundSound;
    await db.signOff.update({ where: { id }, data: sealContent(before) });
    expect(await read()).toMatchObject({ state: 'sealed', sealHolds: true, presets: [{ foundSound: [] }] });
    const { url } = (await shop.desk.ask('POST', `/visits/${yard.visitId}/report`)).json();
    const report = await shop.app.inject({ url: url.replace('/r/', '/api/v1/reports/') });
    expect(report.json()).toMatchObject({ sealHolds: true, presets: [{ foundSound: [] }] });
  });

  it('says so when the sealed text was changed behind its back', async () => {
    await proveTestPreset(shop.tuner, yard);
    await sign();
    const { db } = shop.owner.actor;
    const { id, sealedText } = await db.signOff.findFirstOrThrow();
    await db.signOff.update({
      where: { id },
      data: { sealedText: sealedText.replace('"targetKpa":140', '"targetKpa":141') },
    });
    expect(await read()).toMatchObject({ state: 'sealed', sealHolds: false });
  });
});

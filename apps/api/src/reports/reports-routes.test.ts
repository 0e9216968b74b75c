import { cautionsForDriving, signOffKeys } from '@pullbook/contracts';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { openTestWorkshop, type TestWorkshop } from '../plumbing/test-workshop.js';
import { fillTestYard, proveTestPreset, pullAt, type TestYard } from '../tuning-sessions/test-yard.js';
import { readJobSheet } from './read-job-sheet.js';

let shop: TestWorkshop;
let yard: TestYard;
beforeEach(async () => {
  shop = await openTestWorkshop();
  yard = await fillTestYard(shop);
});
afterEach(() => shop.close());

async function signOff(): Promise<void> {
  await proveTestPreset(shop.tuner, yard);
  const items = signOffKeys.map((key) => ({ key, done: true }));
  const payload = { items, presetIds: [yard.presetId], signedName: 'Olga Owner' };
  await shop.owner.ask('POST', `/visits/${yard.visitId}/sign-off`, { payload });
}
const makeLink = () => shop.desk.ask('POST', `/visits/${yard.visitId}/report`);
const open = (url: string) => shop.app.inject({ url: `/api/v1/reports/${url.slice('/r/'.length)}` });

describe('POST /visits/{id}/report', () => {
  it('makes an address with a secret of 256 bits, of which only the hash is kept', async () => {
    await signOff();
    const answer = await makeLink();
    expect(answer.statusCode).toBe(201);
    expect(answer.headers['cache-control']).toBe('no-store');
    expect(answer.json()).toMatchObject({ visitId: yard.visitId, openedCount: 0, revokedAt: null });
    const secret = answer.json().url.slice('/r/'.length);
    expect(Buffer.from(secret, 'base64url')).toHaveLength(32);
    const rows = JSON.stringify(await shop.owner.actor.db.reportLink.findMany());
    const events = JSON.stringify(await shop.owner.actor.db.auditEvent.findMany());
    expect(rows + events).not.toContain(secret);
  });

  it("refuses a visit that is not signed off, and does not find another workshop's", async () => {
    const early = await makeLink();
    expect(early.statusCode).toBe(409);
    expect(early.json()).toMatchObject({ code: 'sign-off-incomplete' });
    expect((await shop.stranger.ask('POST', `/visits/${yard.visitId}/report`)).statusCode).toBe(404);
    expect((await shop.stranger.ask('GET', `/visits/${yard.visitId}/report`)).statusCode).toBe(404);
  });
});

describe('GET /reports/{token}', () => {
  it('tells whoever holds the link what was sealed, counts the openings and stays out of caches and indexes', async () => {
    await signOff();
    const { url, id } = (await makeLink()).json();
    const answer = await open(url);
    expect(answer.statusCode).toBe(200);
    expect(answer.headers['cache-control']).toBe('no-store');
    expect(answer.headers['x-robots-tag']).toContain('noindex');
    expect(answer.json()).toMatchObject({
      workshopName: 'Test workshop',
      model: 'Estate, 2.0 turbo',
      presets: [{ presetId: yard.presetId, accepted: true }],
      cautions: [...cautionsForDriving],
      signedName: 'Olga Owner',
      sealHolds: true,
    });
    expect(answer.body).not.toContain('Customer');
    await open(url);
    const links = (await shop.desk.ask('GET', `/visits/${yard.visitId}/report`)).json();
    expect(links.items).toMatchObject([{ id, openedCount: 2 }]);
    expect(JSON.stringify(links)).not.toContain(url);
  });

  it('tells that the car was looked over, but not who did it and what they noted', async () => {
    const { id } = await pullAt(shop.tuner, yard, 10);
    await shop.tuner.ask('POST', `/pulls/${id}/found-sound`, { payload: { note: 'gate free' } });
    await signOff();
    const answer = await open((await makeLink()).json().url);
    expect(answer.json().presets[0].foundSound).toEqual([{ afterPull: 1, at: '2026-11-25T09:00:00.000Z' }]);
    for (const inside of ['gate free', shop.tuner.actor.name]) expect(answer.body).not.toContain(inside);
  });

  it('tells the sealed words even after the car and the preset were renamed', async () => {
    await signOff();
    const { url } = (await makeLink()).json();
    await shop.owner.actor.db.car.update({ where: { id: yard.carId }, data: { model: 'Something else' } });
    expect((await open(url)).json().model).toBe('Estate, 2.0 turbo');
  });

  it('answers 404 for an address that never was one', async () => {
    expect((await open(`/r/${'A'.repeat(43)}`)).statusCode).toBe(404);
    expect((await open('/r/short')).statusCode).toBe(400);
  });
});

describe('POST /report-links/{id}/revoke', () => {
  it('ends a link at once and for good', async () => {
    await signOff();
    const { url, id } = (await makeLink()).json();
    const answer = await shop.desk.ask('POST', `/report-links/${id}/revoke`);
    expect(answer.statusCode).toBe(200);
    expect(answer.json().revokedAt).toBe('2026-11-25T09:00:00.000Z');
    const gone = await open(url);
    expect(gone.statusCode).toBe(410);
    expect(gone.json()).toMatchObject({ code: 'gone' });
    shop.clock.advance(60);
    const again = await shop.desk.ask('POST', `/report-links/${id}/revoke`);
    expect(again.json().revokedAt).toBe('2026-11-25T09:00:00.000Z');
    expect(again.json().openedCount).toBe(0);
  });

  it("does not find another workshop's link", async () => {
    await signOff();
    const { id, url } = (await makeLink()).json();
    expect((await shop.stranger.ask('POST', `/report-links/${id}/revoke`)).statusCode).toBe(404);
    expect((await open(url)).statusCode).toBe(200);
  });
});

describe('readJobSheet', () => {
  it('gathers visit, controller, presets with their pulls, and the readiness check', async () => {
    await pullAt(shop.tuner, yard, 10);
    const { id } = await pullAt(shop.tuner, yard, 20, { peakKpa: 158 });
    await shop.tuner.ask('POST', `/pulls/${id}/void`, { payload: { reason: 'wrong gear' } });
    const sheet = await readJobSheet(shop.desk.actor, yard.visitId, 'http://127.0.0.1:3000');
    expect(sheet).toMatchObject({
      workshopName: 'Test workshop',
      model: 'Estate, 2.0 turbo',
      controller: { name: 'Three slots', presetSlots: 3, loop: 'open' },
      visitUrl: `http://127.0.0.1:3000/visits/${yard.visitId}`,
      printedBy: 'Dana Desk',
      presets: [
        {
          name: 'Dry track',
          state: 'on-test',
          pulls: [
            { number: 1, dutyPct: 10, isVoid: false, verdict: { text: 'usable' } },
            { number: 2, dutyPct: 20, isVoid: true, verdict: { text: 'void: wrong gear' } },
          ],
          strip: { targetKpa: 140, ceilingKpa: 155, baseKpa: 55, next: null },
        },
      ],
    });
    expect(sheet.readiness).toHaveLength(9);
    expect(sheet.readiness.every(({ ok }) => ok)).toBe(true);
  });

  it('says of a pull that the car was looked over after it and found sound', async () => {
    for (const peakKpa of [57, 158]) {
      const { id } = await pullAt(shop.tuner, yard, 10, { peakKpa });
      await shop.tuner.ask('POST', `/pulls/${id}/found-sound`, { payload: {} });
    }
    const sheet = await readJobSheet(shop.desk.actor, yard.visitId, '');
    const [low, high] = sheet.presets[0]?.pulls.map(({ verdict }) => verdict.text) ?? [];
    expect(low).toBe('usable. Car looked over, sound.');
    expect(high).toMatch(/^usable: The peak .* passed the ceiling .*\. Car looked over, sound\.$/);
  });

  it("does not find another workshop's visit", async () => {
    await expect(readJobSheet(shop.stranger.actor, yard.visitId, '')).rejects.toMatchObject({
      code: 'not-found',
    });
  });
});

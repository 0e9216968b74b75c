import { createHash } from 'node:crypto';
import { readdirSync } from 'node:fs';
import path from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { openTestWorkshop, type TestPerson, type TestWorkshop } from '../plumbing/test-workshop.js';
import { fillTestYard, type TestYard } from '../tuning-sessions/test-yard.js';
import { testLog } from './test-log.js';

let shop: TestWorkshop;
let yard: TestYard;
beforeEach(async () => {
  shop = await openTestWorkshop();
  yard = await fillTestYard(shop);
});
afterEach(() => shop.close());

const csv = { 'content-type': 'text/csv' };
const drop = (text: string, person: TestPerson = shop.tuner, query = '') =>
  person.ask('POST', `/tuning-sessions/${yard.sessionId}/logs${query}`, { payload: text, headers: csv });
const confirm = (logId: string, more: object = {}, person: TestPerson = shop.tuner) =>
  person.ask('POST', `/logs/${logId}/pulls`, {
    payload: { presetId: yard.presetId, dutyPct: 10, indexes: [0], ...more },
  });

describe('POST /tuning-sessions/{id}/logs', () => {
  it('keeps the original bytes and finds the pulls with their peaks', async () => {
    const text = testLog([{ peakKpa: 120 }, { peakKpa: 132 }]);
    const answer = await drop(text, shop.tuner, '?fileName=morning.csv');
    expect(answer.statusCode).toBe(201);
    const log = answer.json();
    const sha256 = createHash('sha256').update(text).digest('hex');
    expect(log).toMatchObject({
      fileName: 'morning.csv',
      byteCount: text.length,
      sha256,
      alreadyOnRecord: false,
      confirmed: [],
    });
    expect(log.analysis.sampleRateHz).toBeCloseTo(50, 6);
    expect(log.analysis.pulls).toHaveLength(2);
    // The wave form holds its peak for half a second, far longer than the filter is wide.
    expect(log.analysis.pulls[0].peakKpa).toBeCloseTo(120, 0);
    expect(log.analysis.pulls[1].peakKpa).toBeCloseTo(132, 0);
    expect(log.traces).toHaveLength(2);
    expect(log.traces[0].timeS.length).toBe(log.traces[0].boostKpa.length);
    expect((await shop.app.objects.get(sha256)).toString('utf8')).toBe(text);
    expect((await shop.desk.ask('GET', `/logs/${log.id}`)).json()).toEqual(log);
    const list = (await shop.desk.ask('GET', `/tuning-sessions/${yard.sessionId}/logs`)).json();
    expect(list.items.map(({ id }: { id: string }) => id)).toEqual([log.id]);
  });

  it('takes a form with a file as well', async () => {
    const text = testLog([{ peakKpa: 120 }]);
    const boundary = 'a-boundary-of-this-test';
    const payload = [
      `--${boundary}`,
      'content-disposition: form-data; name="file"; filename="drive.csv"',
      'content-type: text/csv',
      '',
      text,
      `--${boundary}--`,
      '',
    ].join('\r\n');
    const headers = { 'content-type': `multipart/form-data; boundary=${boundary}` };
    const answer = await shop.tuner.ask('POST', `/tuning-sessions/${yard.sessionId}/logs`, {
      payload,
      headers,
    });
    expect(answer.statusCode).toBe(201);
    expect(answer.json()).toMatchObject({ fileName: 'drive.csv', byteCount: text.length });
    const none = await shop.tuner.ask('POST', `/tuning-sessions/${yard.sessionId}/logs`, {
      payload: `--${boundary}--\r\n`,
      headers,
    });
    expect(none.statusCode).toBe(400);
    expect(none.json()).toMatchObject({ errors: [{ field: 'file' }] });
  });

  it('gives the log on record for the same bytes, even when they come at the same moment', async () => {
    const text = testLog([{ peakKpa: 120 }]);
    const answers = await Promise.all([drop(text), drop(text)]);
    expect(answers.map((answer) => answer.statusCode).sort()).toEqual([200, 201]);
    const again = await drop(text);
    expect(again.statusCode).toBe(200);
    expect(again.json()).toMatchObject({ id: answers[0]?.json().id, alreadyOnRecord: true });
    expect(await shop.tuner.actor.db.log.count()).toBe(1);
  });

  it.each([
    ['an empty file', '', 'empty'],
    [
      'a log without a pressure column',
      'Time (s),RPM (1/min)\n0.00,1000\n0.02,1010\n0.04,1020\n',
      'pressure',
    ],
    ['a file without rows of numbers', 'Time (s),Boost (kPa)\n', 'row'],
  ])('refuses %s in plain words and leaves nothing behind', async (_what, text, word) => {
    const answer = await drop(text);
    expect(answer.statusCode).toBe(422);
    expect(answer.json()).toMatchObject({ code: 'log-unreadable', errors: [{ field: 'file' }] });
    expect(answer.json().detail.toLowerCase()).toContain(word);
    expect(await shop.tuner.actor.db.log.count()).toBe(0);
    expect(await filesKept()).toEqual([]);
  });

  it('refuses what is no text', async () => {
    const headers = { 'content-type': 'application/octet-stream' };
    const payload = Buffer.from(Array.from({ length: 5000 }, (_, index) => (index * 7919) % 256));
    const answer = await shop.tuner.ask('POST', `/tuning-sessions/${yard.sessionId}/logs`, {
      payload,
      headers,
    });
    expect(answer.statusCode).toBe(422);
    const picture = await shop.tuner.ask('POST', `/tuning-sessions/${yard.sessionId}/logs`, {
      payload,
      headers: { 'content-type': 'image/png' },
    });
    expect(picture.statusCode).toBe(415);
  });

  it('is not for the desk, nor for another workshop, nor for a closed visit', async () => {
    const text = testLog([{ peakKpa: 120 }]);
    const log = (await drop(text)).json();
    expect((await drop(text, shop.desk)).statusCode).toBe(403);
    expect((await drop(text, shop.stranger)).statusCode).toBe(404);
    expect((await shop.stranger.ask('GET', `/logs/${log.id}`)).statusCode).toBe(404);
    expect((await shop.stranger.ask('GET', `/tuning-sessions/${yard.sessionId}/logs`)).statusCode).toBe(404);
    expect((await confirm(log.id, {}, shop.stranger)).statusCode).toBe(404);
    await shop.tuner.actor.db.visit.update({ where: { id: yard.visitId }, data: { stage: 'collected' } });
    expect((await drop(testLog([{ peakKpa: 121 }]))).json()).toMatchObject({ code: 'visit-closed' });
    expect((await confirm(log.id)).json()).toMatchObject({ code: 'visit-closed' });
  });
});

describe('POST /logs/{id}/pulls', () => {
  it('takes found pulls into the book with what was measured', async () => {
    const log = (await drop(testLog([{ peakKpa: 58 }, { peakKpa: 59 }]))).json();
    const answer = await confirm(log.id, { indexes: [0, 1], heatSoaked: true });
    expect(answer.statusCode).toBe(201);
    const [first] = log.analysis.pulls;
    expect(answer.json().items).toMatchObject([
      {
        number: 1,
        dutyPct: 10,
        source: 'log',
        logId: log.id,
        peakKpa: first.peakKpa,
        rawPeakKpa: first.rawPeakKpa,
        usable: first.usable,
        heatSoaked: true,
      },
      { number: 2, source: 'log' },
    ]);
    const { confirmed } = (await shop.desk.ask('GET', `/logs/${log.id}`)).json();
    expect(confirmed.map(({ index }: { index: number }) => index)).toEqual([0, 1]);
  });

  it('takes a pull once, and again after it was voided', async () => {
    const log = (await drop(testLog([{ peakKpa: 58 }]))).json();
    const pull = (await confirm(log.id)).json().items[0];
    const twice = await confirm(log.id);
    expect(twice.statusCode).toBe(409);
    expect(twice.json()).toMatchObject({ code: 'conflict', errors: [{ field: 'indexes.0' }] });
    expect((await confirm(log.id, { indexes: [0, 0] })).statusCode).toBe(409);
    await shop.tuner.ask('POST', `/pulls/${pull.id}/void`, { payload: { reason: 'wrong duty' } });
    expect((await confirm(log.id, { dutyPct: 20 })).json().items).toMatchObject([{ number: 2, dutyPct: 20 }]);
  });

  it('takes all or none', async () => {
    const log = (await drop(testLog([{ peakKpa: 58 }]))).json();
    const answer = await confirm(log.id, { indexes: [0, 7] });
    expect(answer.statusCode).toBe(400);
    expect(answer.json()).toMatchObject({ code: 'invalid-request', errors: [{ field: 'indexes.1' }] });
    expect(await shop.tuner.actor.db.pull.count()).toBe(0);
  });

  it('refuses a duty that the controller does not have, and the desk', async () => {
    const log = (await drop(testLog([{ peakKpa: 58 }]))).json();
    expect((await confirm(log.id, { dutyPct: 10.5 })).json()).toMatchObject({ code: 'duty-out-of-range' });
    expect((await confirm(log.id, {}, shop.desk)).statusCode).toBe(403);
  });
});

describe('GET /visits/{id}/logs', () => {
  it('tells each log of the visit in a line, and how many of its pulls are in the book', async () => {
    const heads = async () => (await shop.desk.ask('GET', `/visits/${yard.visitId}/logs`)).json().items;
    expect(await heads()).toEqual([]);
    const log = (await drop(testLog([{ peakKpa: 58 }, { peakKpa: 59 }]))).json();
    const line = { id: log.id, tuningSessionId: yard.sessionId, fileName: log.fileName, pullCount: 2 };
    expect(await heads()).toMatchObject([{ ...line, confirmedCount: 0 }]);
    await confirm(log.id, { indexes: [1] });
    expect(await heads()).toMatchObject([{ ...line, confirmedCount: 1 }]);
  });

  it('is not for another workshop', async () => {
    expect((await shop.stranger.ask('GET', `/visits/${yard.visitId}/logs`)).statusCode).toBe(404);
  });
});

describe('POST /analysis/log', () => {
  it('answers with the analysis and keeps nothing', async () => {
    const answer = await shop.desk.ask('POST', '/analysis/log', {
      payload: testLog([{ peakKpa: 120 }]),
      headers: csv,
    });
    expect(answer.statusCode).toBe(200);
    expect(answer.json().channels.map(({ header }: { header: string }) => header)).toContain('Boost (kPa)');
    expect(answer.json().pulls).toHaveLength(1);
    expect(await filesKept()).toEqual([]);
    expect(await shop.tuner.actor.db.log.count()).toBe(0);
  });

  it('says what is wrong with a log, and wants somebody signed in', async () => {
    const answer = await shop.desk.ask('POST', '/analysis/log', { payload: 'a,b\n1,2\n', headers: csv });
    expect(answer.statusCode).toBe(422);
    const unknown = await shop.app.inject({
      method: 'POST',
      url: '/api/v1/analysis/log',
      payload: 'x',
      headers: csv,
    });
    expect(unknown.statusCode).toBe(401);
  });
});

/** Every file that the object store holds, half-written ones too. */
async function filesKept(): Promise<string[]> {
  const probe = await shop.app.objects.receive((async function* () {})());
  await probe.drop();
  return readdirSync(path.dirname(probe.file), { recursive: true }).map(String);
}

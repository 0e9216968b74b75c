import type { Log } from '@pullbook/contracts';
import type { LogOptions } from '@pullbook/tuning-math';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { openTestWorkshop, type TestPerson, type TestWorkshop } from '../plumbing/test-workshop.js';
import { fillTestYard, type TestYard } from '../tuning-sessions/test-yard.js';
import { analyseFile } from './analyse-file.js';
import { testLog } from './test-log.js';

let shop: TestWorkshop;
let yard: TestYard;
beforeEach(async () => {
  shop = await openTestWorkshop();
  yard = await fillTestYard(shop);
});
afterEach(() => shop.close());

const drop = async (text: string): Promise<Log> =>
  (
    await shop.tuner.ask('POST', `/tuning-sessions/${yard.sessionId}/logs`, {
      payload: text,
      headers: { 'content-type': 'text/csv' },
    })
  ).json();
const again = (logId: string, payload: object = {}, person: TestPerson = shop.tuner) =>
  person.ask('POST', `/logs/${logId}/analyse`, { payload });
const setThresholds = (changes: object, revision: number) =>
  shop.owner.ask('PATCH', '/log-settings', {
    payload: { changes },
    headers: { 'if-match': `"${revision}"` },
  });
const confirm = (logId: string, indexes: number[], more: object = {}) =>
  shop.tuner.ask('POST', `/logs/${logId}/pulls`, {
    payload: { presetId: yard.presetId, dutyPct: 10, indexes, ...more },
  });
const versionRow = (logId: string, number: number) =>
  shop.tuner.actor.db.logVersion.findFirstOrThrow({ where: { logId, number } });

describe('a stored analysis', () => {
  it('is computed again to the last byte from the original bytes and what was recorded with it', async () => {
    await setThresholds({ smoothWindowS: 0.31, leastSpanRpm: 1234.5, riseHighPct: 87.3 }, 1);
    const { id, sha256 } = await drop(testLog([{ peakKpa: 121.7 }, { peakKpa: 133.3 }]));
    const row = await versionRow(id, 1);
    const options = row.options as LogOptions;
    expect(options.settings).toMatchObject({ smoothWindowS: 0.31, riseHighPct: 87.3, slipPct: 5 });
    const { analysis, traces } = await analyseFile({
      file: shop.app.objects.fileOf(sha256),
      byteCount: null,
      options,
      recipes: [],
    });
    expect(analysis.provenance.codeVersion).toBe(row.codeVersion);
    expect(JSON.stringify(analysis)).toBe(JSON.stringify(row.analysis));
    expect(JSON.stringify(traces)).toBe(JSON.stringify(row.traces));
  });
});

describe('POST /logs/{id}/analyse', () => {
  it('makes a new version by the workshop’s thresholds and leaves the older one as it was', async () => {
    const log = await drop(testLog([{ peakKpa: 120 }]));
    expect([log.version, log.analysis.pulls[0]?.usable]).toEqual([1, true]);
    await setThresholds({ leastSpanRpm: 5000 }, 1);
    const answer = await again(log.id, { reason: 'longer pulls asked for' });
    expect(answer.statusCode).toBe(201);
    expect(answer.json()).toMatchObject({ version: 2, id: log.id });
    expect(answer.json().analysis.pulls[0].reasons.map(({ code }: { code: string }) => code)).toContain(
      'short',
    );
    expect((await shop.desk.ask('GET', `/logs/${log.id}`)).json().version).toBe(2);
    const first = (await shop.desk.ask('GET', `/logs/${log.id}/versions/1`)).json();
    expect(first).toEqual(log);
    const list = (await shop.desk.ask('GET', `/logs/${log.id}/versions`)).json();
    expect(list.items).toMatchObject([
      { number: 2, reason: 'longer pulls asked for', madeBy: 'Tomas Tuner', pullCount: 1 },
      { number: 1, reason: '' },
    ]);
    expect((await shop.desk.ask('GET', `/logs/${log.id}/versions/3`)).statusCode).toBe(404);
  });

  it('gives byte-equal figures by the recorded settings, whatever the workshop holds to now', async () => {
    const log = await drop(testLog([{ peakKpa: 120 }]));
    await setThresholds({ smoothWindowS: 0.5 }, 1);
    expect((await again(log.id, { settings: 'recorded' })).statusCode).toBe(201);
    const [one, two] = [await versionRow(log.id, 1), await versionRow(log.id, 2)];
    expect(JSON.stringify(two.analysis)).toBe(JSON.stringify(one.analysis));
    expect(JSON.stringify(two.traces)).toBe(JSON.stringify(one.traces));
    expect(JSON.stringify(two.options)).toBe(JSON.stringify(one.options));
  });

  it('reads the file as it is told, keeps to it, and goes back to recognition', async () => {
    const log = await drop(testLog([{ peakKpa: 120 }]));
    const reading = { columns: [{ header: 'Boost (kPa)', quantity: 'boost-pressure', unit: 'mbar' }] };
    const told = (await again(log.id, { reading })).json() as Log;
    expect(told.reading).toMatchObject(reading);
    expect(told.analysis.channels[3]).toMatchObject({ unit: 'mbar', basis: 'recipe' });
    expect(told.analysis.pulls).toEqual([]);
    expect(((await again(log.id)).json() as Log).reading).toMatchObject(reading);
    const back = (await again(log.id, { reading: null })).json() as Log;
    expect([back.reading, back.version, back.analysis.pulls.length]).toEqual([null, 4, 1]);
    const wrong = { columns: [{ header: 'Boost (kPa)', quantity: 'boost-pressure', unit: 'rpm' }] };
    expect((await again(log.id, { reading: wrong })).statusCode).toBe(400);
    const missing = { columns: [{ header: 'No such', quantity: 'boost-pressure', unit: 'kPa' }] };
    expect((await again(log.id, { reading: missing })).json()).toMatchObject({ code: 'log-unreadable' });
  });

  it('knows the pulls that are in the book by their stretch of time, and does not take them twice', async () => {
    const log = await drop(testLog([{ peakKpa: 58 }, { peakKpa: 59 }]));
    await confirm(log.id, [1]);
    await setThresholds({ fullThrottlePct: 95 }, 1);
    const { confirmed, version } = (await again(log.id)).json() as Log;
    expect(confirmed.map(({ index }) => index)).toEqual([1]);
    expect((await confirm(log.id, [1])).statusCode).toBe(409);
    expect((await confirm(log.id, [0], { version: version - 1 })).json()).toMatchObject({
      code: 'conflict',
      errors: [{ field: 'version' }],
    });
    expect((await confirm(log.id, [0], { version })).statusCode).toBe(201);
    const first = (await shop.tuner.ask('GET', `/logs/${log.id}/versions/1`)).json() as Log;
    expect(first.confirmed.map(({ index }) => index)).toEqual([0, 1]);
  });

  it('is for tuners, and finds no log of another workshop', async () => {
    const log = await drop(testLog([{ peakKpa: 58 }]));
    expect((await again(log.id, {}, shop.desk)).statusCode).toBe(403);
    expect((await again(log.id, {}, shop.stranger)).statusCode).toBe(404);
    expect((await shop.stranger.ask('GET', `/logs/${log.id}/versions`)).statusCode).toBe(404);
  });
});

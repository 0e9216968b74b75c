import type { TraceIndex } from '@pullbook/contracts';
import { readLog } from '@pullbook/tuning-math';
import papaparse from 'papaparse';
import { readdirSync, rmSync } from 'node:fs';
import path from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { gunzipSync } from 'node:zlib';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { testLog } from '../logs/test-log.js';
import { openTestWorkshop, type TestPerson, type TestWorkshop } from '../plumbing/test-workshop.js';
import { fillTestYard, type TestYard } from '../tuning-sessions/test-yard.js';

let shop: TestWorkshop;
let yard: TestYard;
let longId: string;
let shortId: string;
beforeAll(async () => {
  shop = await openTestWorkshop();
  yard = await fillTestYard(shop);
  longId = await drop(longLog());
  shortId = await drop(testLog([{ peakKpa: 58 }]));
});
afterAll(() => shop.close());

async function drop(text: string): Promise<string> {
  const answer = await shop.tuner.ask(
    'POST',
    `/tuning-sessions/${yard.sessionId}/logs?fileName=day%201.csv`,
    {
      payload: text,
      headers: { 'content-type': 'text/csv' },
    },
  );
  expect(answer.statusCode).toBe(201);
  return answer.json().id;
}

/** Asks until the traces are made. */
async function indexOf(logId: string, person: TestPerson = shop.desk): Promise<TraceIndex> {
  for (;;) {
    const answer = await person.ask('GET', `/logs/${logId}/traces`);
    if (answer.statusCode === 200) return answer.json();
    expect(answer.statusCode).toBe(202);
    expect(answer.json()).toMatchObject({ state: 'building' });
    await wait(50);
  }
}

const tileUrl = ({ log, build }: TraceIndex, channel: number | 'time', level = 0, tile = 0): string =>
  `/logs/${log.id}/traces/${build}/${channel}/${level}/${tile}`;

async function tileOf(url: string): Promise<ArrayBuffer> {
  const answer = await shop.desk.ask('GET', url);
  expect(answer.statusCode).toBe(200);
  return Uint8Array.from(answer.rawPayload).buffer;
}

/** Twenty thousand rows at 100 Hz with a gizmo that nobody knows, a spike, and cells left empty. */
function longLog(): string {
  const rows = ['Time (s),RPM (1/min),Throttle (%),Boost (psi),IAT (°F),"Gizmo, left"'];
  for (let row = 0; row < 20_000; row += 1) {
    const timeS = row / 100;
    const open = timeS % 60 > 20 && timeS % 60 < 27;
    const boost = open ? 18 * (1 - Math.exp(-((timeS % 60) - 20) / 0.6)) : -4;
    const rpm = open ? 2000 + 600 * ((timeS % 60) - 20) : 1500;
    const gizmo = row === 12_345 ? '900.5' : row % 10 === 0 ? (row % 7).toString() : '';
    rows.push(
      `${timeS.toFixed(2)},${rpm.toFixed(0)},${open ? 100 : 9},${boost.toFixed(3)},${(80 + timeS / 100).toFixed(1)},${gizmo}`,
    );
  }
  return `${rows.join('\r\n')}\r\n`;
}

describe('GET /logs/{id}/traces', () => {
  it('tells all channels, levels and pulls of a log, to any member', async () => {
    const logId = longId;
    const index = await indexOf(logId);
    expect(index).toMatchObject({
      log: { id: logId, fileName: 'day 1.csv' },
      visitId: yard.visitId,
      carId: yard.carId,
      rowCount: 20_000,
      fromS: 0,
      toS: 199.99,
      tileBins: 4096,
      levels: [
        { rowsPerBin: 1, binCount: 20_000 },
        { rowsPerBin: 4, binCount: 5000 },
        { rowsPerBin: 16, binCount: 1250 },
      ],
    });
    expect(index.channels.map(({ name, unit }) => [name, unit])).toEqual([
      ['Boost', 'kPa'],
      ['Boost, filtered', 'kPa'],
      ['Engine speed', 'rpm'],
      ['Throttle', 'pct'],
      ['Intake temperature', 'C'],
      ['Gizmo, left', 'none'],
    ]);
    expect(index.channels[5]).toMatchObject({
      sampleCount: 2001,
      highest: 900.5,
      usualHigh: 6,
      usualLow: 1,
      intervalS: expect.closeTo(0.1, 9),
    });
    expect(index.pulls).toHaveLength(3);
    expect(index.pulls[0]).toMatchObject({ startS: 20.01, usable: true, record: null });
  });

  it('tells of a pull what the book knows of it', async () => {
    const logId = await drop(testLog([{ peakKpa: 58 }, { peakKpa: 62 }]));
    const payload = { presetId: yard.presetId, dutyPct: 10, indexes: [1] };
    const taken = await shop.tuner.ask('POST', `/logs/${logId}/pulls`, { payload });
    const { pulls } = await indexOf(logId);
    const { id: pullId } = taken.json().items[0];
    const goal = { presetName: 'Dry track', targetKpa: 140, toleranceKpa: 4, ceilingKpa: 155 };
    expect(pulls.map(({ record }) => record)).toEqual([
      null,
      { pullId, number: 1, presetId: yard.presetId, dutyPct: 10, ...goal },
    ]);
    await shop.tuner.ask('POST', `/pulls/${pullId}/void`, { payload: { reason: 'wrong gear' } });
    expect((await indexOf(logId)).pulls[1]?.record).toBeNull();
  });

  it('makes the traces once, and again after they were cleared away', async () => {
    const logId = await drop(testLog([{ peakKpa: 57 }]));
    const before = traceFiles();
    const all = await Promise.all([indexOf(logId), indexOf(logId), indexOf(logId)]);
    expect(new Set(all.map(({ build }) => build)).size).toBe(1);
    const kept = traceFiles().filter((file) => !before.includes(file));
    expect(kept).toHaveLength(1);
    rmSync(kept[0] ?? '');
    expect(await indexOf(logId)).toEqual(all[0]);
  });

  it('knows nothing of the log of another workshop, and says when the bytes are gone', async () => {
    const logId = await drop(testLog([{ peakKpa: 60 }]));
    expect((await shop.stranger.ask('GET', `/logs/${logId}/traces`)).statusCode).toBe(404);
    const { sha256 } = (await shop.desk.ask('GET', `/logs/${logId}`)).json();
    rmSync(shop.app.objects.fileOf(sha256));
    expect((await shop.desk.ask('GET', `/logs/${logId}/traces`)).statusCode).toBe(410);
  });
});

describe('GET /logs/{id}/traces/{build}/{channel}/{level}/{tile}', () => {
  it('gives the exact samples at the lowest level and the extremes of all at the highest', async () => {
    const text = longLog();
    const logId = longId;
    const index = await indexOf(logId);
    const { columns, timeS } = readLog(text);
    const rpm = columns.get('engine-speed') ?? new Float32Array(0);
    const tiles: number[] = [];
    const times: number[] = [];
    for (let tile = 0; tile < 5; tile += 1) {
      tiles.push(...new Float32Array(await tileOf(tileUrl(index, 2, 0, tile))));
      times.push(...new Float64Array(await tileOf(tileUrl(index, 'time', 0, tile))).slice(0, -1));
    }
    expect(Float32Array.from(tiles)).toEqual(rpm);
    expect(Float64Array.from(times)).toEqual(timeS);
    const top = new Float32Array(await tileOf(tileUrl(index, 2, 2)));
    expect(top).toHaveLength(2 * 1250);
    expect(Math.min(...top.subarray(0, 1250))).toBe(rpm.reduce((low, value) => Math.min(low, value)));
    expect(Math.max(...top.subarray(1250))).toBe(rpm.reduce((high, value) => Math.max(high, value)));
    const starts = new Float64Array(await tileOf(tileUrl(index, 'time', 2)));
    expect(starts).toHaveLength(1251);
    expect([starts[0], starts[1], starts[1250]]).toEqual([0, 0.16, expect.closeTo(200, 6)]);
  });

  it('is kept by the browser for good, and packed for whoever unpacks', async () => {
    const url = tileUrl(await indexOf(shortId), 0);
    const plain = await shop.desk.ask('GET', url);
    expect(plain.headers).toMatchObject({
      'content-type': 'application/octet-stream',
      'cache-control': 'private, max-age=31536000, immutable',
      etag: expect.stringMatching(/^"[0-9a-f]{16}-0-0-0"$/),
    });
    const packed = await shop.desk.ask('GET', url, { headers: { 'accept-encoding': 'gzip, br' } });
    expect(packed.headers['content-encoding']).toBe('gzip');
    expect(packed.rawPayload.byteLength).toBeLessThan(plain.rawPayload.byteLength / 2);
    expect(gunzipSync(packed.rawPayload)).toEqual(plain.rawPayload);
    const again = await shop.desk.ask('GET', url, {
      headers: { 'if-none-match': String(plain.headers.etag) },
    });
    expect([again.statusCode, again.body]).toEqual([304, '']);
  });

  it('is not there for strangers, other builds, and beyond the end', async () => {
    const index = await indexOf(shortId);
    const url = tileUrl(index, 0);
    expect((await shop.stranger.ask('GET', url)).statusCode).toBe(404);
    const missing = [
      tileUrl({ ...index, build: '0123456789abcdef' }, 0),
      tileUrl(index, 0, 0, 1),
      tileUrl(index, 0, 1),
      tileUrl(index, index.channels.length),
    ];
    for (const one of missing) expect((await shop.desk.ask('GET', one)).statusCode, one).toBe(404);
    expect((await shop.desk.ask('GET', url.replace(/.{16}(?=\/0\/0\/0)/, 'no-build'))).statusCode).toBe(400);
  });
});

describe('GET /logs/{id}/cut.csv', () => {
  const cut = (logId: string, query: string, person: TestPerson = shop.desk) =>
    person.ask('GET', `/logs/${logId}/cut.csv?${query}`);

  it('reads back, through a parser of the registry, as the very same numbers', async () => {
    const text = longLog();
    const logId = longId;
    await indexOf(logId);
    const answer = await cut(logId, 'fromS=40.955&toS=123.45');
    expect(answer.statusCode).toBe(200);
    expect(answer.headers['content-type']).toMatch(/^text\/csv/);
    expect(answer.headers['content-disposition']).toBe('attachment; filename="day-1-40.95-to-123.45-s.csv"');
    expect(answer.body.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/);
    // papaparse reads RFC 4180.
    const { data, errors } = papaparse.parse<string[]>(answer.body, { skipEmptyLines: true });
    expect(errors).toEqual([]);
    const [head, ...rows] = data;
    expect(head).toEqual([
      'Time (s)',
      'Boost (kPa)',
      'Boost, filtered (kPa)',
      'Engine speed (r/min)',
      'Throttle (%)',
      'Intake temperature (°C)',
      'Gizmo, left',
    ]);
    const { timeS, byPosition } = readLog(text, { keptColumns: new Set([1, 2, 3, 4, 5]) });
    const first = timeS.findIndex((time) => time >= 40.955);
    const last = timeS.findLastIndex((time) => time <= 123.45);
    expect(rows).toHaveLength(last - first + 1);
    const wrong = rows.flatMap((cells, index) => {
      const at = (column: number): number => byPosition.get(column)?.[first + index] ?? NaN;
      const want = [timeS[first + index], at(3), null, at(1), at(2), at(4), at(5)];
      const bad = want.some((value, column) => value !== null && !isSame(cells[column] ?? '', value ?? NaN));
      return bad ? [cells.join()] : [];
    });
    expect(wrong).toEqual([]);
  });

  it('writes the channels that are asked for in the units that are asked for', async () => {
    const logId = longId;
    const index = await indexOf(logId);
    const answer = await cut(logId, 'fromS=26.5&toS=26.51&channels=4,0&pressure=psi&temperature=F');
    expect(index.pulls[0]?.endS).toBeGreaterThan(26.5);
    expect(answer.body).toBe(
      'Time (s),Intake temperature (°F),Boost (psi)\r\n26.5,80.3,18\r\n26.51,80.3,18\r\n',
    );
  });

  it('can be dropped in again as a log', async () => {
    const logId = shortId;
    await indexOf(logId);
    const { channels } = readLog((await cut(logId, 'fromS=3&toS=8')).body);
    expect(channels.map(({ quantity }) => quantity)).toEqual(
      expect.arrayContaining(['time', 'boost-pressure', 'engine-speed', 'throttle']),
    );
  });

  it('refuses an empty stretch, a channel that is not there, and strangers', async () => {
    const logId = await drop(testLog([{ peakKpa: 59 }]));
    expect((await cut(logId, 'fromS=0&toS=1')).statusCode).toBe(409);
    await indexOf(logId);
    expect((await cut(logId, 'fromS=900&toS=901')).json()).toMatchObject({ errors: [{ field: 'fromS' }] });
    expect((await cut(logId, 'fromS=0&toS=1&channels=99')).json()).toMatchObject({
      errors: [{ field: 'channels' }],
    });
    expect((await cut(logId, 'toS=1')).statusCode).toBe(400);
    expect((await cut(logId, 'fromS=0&toS=1', shop.stranger)).statusCode).toBe(404);
  });
});

/** A cell holds this number to the last bit of a single (times: of a double), or nothing where there is none. */
function isSame(cell: string, value: number): boolean {
  if (Number.isNaN(value)) return cell === '';
  const read = Number(cell);
  return read === value || Math.fround(read) === value;
}

function traceFiles(): string[] {
  const folder = path.dirname(path.dirname(shop.app.objects.fileOf('00'.repeat(32))));
  return readdirSync(folder, { recursive: true })
    .map((name) => path.join(folder, String(name)))
    .filter((name) => name.includes('.trace'));
}

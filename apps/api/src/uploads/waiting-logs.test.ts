import type { WaitingLogList } from '@pullbook/contracts';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { testLog } from '../logs/test-log.js';
import { openTestWorkshop, type TestWorkshop } from '../plumbing/test-workshop.js';
import { fillTestYard, type TestYard } from '../tuning-sessions/test-yard.js';

let shop: TestWorkshop;
let yard: TestYard;
let origin: string;
beforeEach(async () => {
  shop = await openTestWorkshop();
  yard = await fillTestYard(shop);
  origin = await shop.app.listen({ port: 0, host: '127.0.0.1' });
});
afterEach(() => shop.close());

const base64 = (text: string) => Buffer.from(text).toString('base64');

/** Sends a file by the protocol (tus 1.0.0), so much of it; gives its id. */
async function send(text: string, fileName: string, sentCount = text.length): Promise<string> {
  const headers = { 'tus-resumable': '1.0.0', cookie: shop.tuner.cookie };
  const metadata = `filename ${base64(fileName)},writtenMs ${base64('1776157200000')}`;
  const made = await fetch(`${origin}/api/v1/uploads`, {
    method: 'POST',
    headers: { ...headers, 'upload-length': String(text.length), 'upload-metadata': metadata },
  });
  const address = made.headers.get('location') ?? '';
  const sent = await fetch(`${origin}${address}`, {
    method: 'PATCH',
    headers: { ...headers, 'content-type': 'application/offset+octet-stream', 'upload-offset': '0' },
    body: text.slice(0, sentCount),
  });
  expect(sent.status).toBe(204);
  return address.split('/').at(-1) ?? '';
}
const waiting = async (): Promise<WaitingLogList> => (await shop.tuner.ask('GET', '/uploads')).json();
const assign = (uploadId: string) =>
  shop.tuner.ask('POST', `/tuning-sessions/${yard.sessionId}/logs/from-upload`, { payload: { uploadId } });

describe('GET /uploads', () => {
  it('tells every whole file that nobody assigned, with what speaks for which session', async () => {
    const { plate } = await shop.tuner.actor.db.car.findFirstOrThrow({ where: { id: yard.carId } });
    const named = await send(testLog([{ peakKpa: 58 }]), `run ${plate.toLowerCase()}.csv`);
    const unnamed = await send(testLog([{ peakKpa: 60 }]), 'a.csv');
    const broken = await send('nothing\nto see\n', 'note.csv');
    await send(testLog([{ peakKpa: 62 }]), 'half.csv', 1000);
    const { items, sessions } = await waiting();
    expect(items.map(({ uploadId }) => uploadId).sort()).toEqual([named, unnamed, broken].sort());
    expect(sessions).toMatchObject([{ tuningSessionId: yard.sessionId, visitId: yard.visitId, plate }]);
    const of = (id: string) => items.find(({ uploadId }) => uploadId === id);
    expect(of(named)).toMatchObject({
      likelySessionId: yard.sessionId,
      writtenAt: '2026-04-14T09:00:00.000Z',
      problem: null,
    });
    expect(of(named)?.suggestions[0]?.reasons[0]?.text).toContain(plate);
    expect(of(broken)?.problem).toContain('no rows of numbers');
  });

  it('assigns nothing by itself, and forgets a file once a person assigned it', async () => {
    const id = await send(testLog([{ peakKpa: 58 }]), 'a.csv');
    await waiting();
    expect((await shop.tuner.ask('GET', `/tuning-sessions/${yard.sessionId}/logs`)).json().items).toEqual([]);
    expect((await assign(id)).statusCode).toBe(201);
    expect((await waiting()).items).toEqual([]);
  });

  it('knows the same bytes again: among what waits, and on record', async () => {
    const text = testLog([{ peakKpa: 58 }]);
    const first = await send(text, 'a.csv');
    const second = await send(text, 'copy of a.csv');
    const { items } = await waiting();
    const later = items.find(({ sameAsUploadId }) => sameAsUploadId !== null);
    expect([first, second]).toContain(later?.sameAsUploadId);
    const log = (await assign(first)).json();
    const [left] = (await waiting()).items;
    expect(left).toMatchObject({ uploadId: second, sha256: log.sha256, sameAsUploadId: null });
    expect(left?.onRecord).toMatchObject([{ logId: log.id, visitId: yard.visitId }]);
    expect((await assign(second)).statusCode).toBe(200);
  });

  it('offers no session of a visit that is closed', async () => {
    await shop.tuner.actor.db.visit.update({ where: { id: yard.visitId }, data: { stage: 'collected' } });
    expect((await waiting()).sessions).toEqual([]);
  });

  it('shows nothing of another workshop, and nothing to the desk', async () => {
    await send(testLog([{ peakKpa: 58 }]), 'a.csv');
    expect((await shop.stranger.ask('GET', '/uploads')).json()).toEqual({ items: [], sessions: [] });
    expect((await shop.desk.ask('GET', '/uploads')).statusCode).toBe(403);
  });
});

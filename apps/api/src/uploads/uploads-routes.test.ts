import type { Log, UploadLook } from '@pullbook/contracts';
import { readdirSync, existsSync } from 'node:fs';
import { readdir } from 'node:fs/promises';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { testLog } from '../logs/test-log.js';
import { openTestWorkshop, type TestPerson, type TestWorkshop } from '../plumbing/test-workshop.js';
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

interface Part {
  readonly person?: TestPerson;
  readonly body?: string;
  readonly headers?: Readonly<Record<string, string>>;
}

/** Asks over the wire, as a client of the protocol does (tus 1.0.0, https://tus.io/protocols/resumable-upload). */
async function ask(method: string, address: string, part: Part = {}): Promise<Response> {
  const { person = shop.tuner, body, headers } = part;
  return fetch(`${origin}${address}`, {
    method,
    headers: { 'tus-resumable': '1.0.0', cookie: person.cookie, ...headers },
    ...(body === undefined ? {} : { body }),
  });
}

const create = (byteCount: number, part: Part = {}) =>
  ask('POST', '/api/v1/uploads', {
    ...part,
    headers: {
      'upload-length': String(byteCount),
      'upload-metadata': `filename ${Buffer.from('morning run.csv').toString('base64')}`,
    },
  });
const patch = (address: string, offset: number, body: string, person = shop.tuner) =>
  ask('PATCH', address, {
    person,
    body,
    headers: { 'content-type': 'application/offset+octet-stream', 'upload-offset': String(offset) },
  });
/** The whole file in one part; gives its id. */
async function upload(text: string): Promise<string> {
  const address = (await create(text.length)).headers.get('location') ?? '';
  expect((await patch(address, 0, text)).status).toBe(204);
  return address.split('/').at(-1) ?? '';
}
const takeIn = (uploadId: string, more: object = {}, person = shop.tuner) =>
  person.ask('POST', `/tuning-sessions/${yard.sessionId}/logs/from-upload`, {
    payload: { uploadId, ...more },
  });
const look = async (uploadId: string, payload: object = {}): Promise<UploadLook> =>
  (await shop.tuner.ask('POST', `/uploads/${uploadId}/look`, { payload })).json();
const filesLeft = (): string[] =>
  existsSync(shop.app.objects.uploadsFolder) ? readdirSync(shop.app.objects.uploadsFolder) : [];

describe('an upload in parts', () => {
  it('goes on where it broke off, and becomes a log with the very same bytes', async () => {
    const text = testLog([{ peakKpa: 58 }]);
    const made = await create(text.length);
    expect(made.status).toBe(201);
    const address = made.headers.get('location') ?? '';
    expect(address).toMatch(/^\/api\/v1\/uploads\/[0-9a-f]{32}$/);
    await patch(address, 0, text.slice(0, 5000));
    const uploadId = address.split('/').at(-1) ?? '';
    expect((await takeIn(uploadId)).json()).toMatchObject({ code: 'conflict' });
    const told = await ask('HEAD', address);
    expect([told.headers.get('upload-offset'), told.headers.get('upload-length')]).toEqual([
      '5000',
      String(text.length),
    ]);
    expect((await patch(address, 4000, text.slice(4000))).status).toBe(409);
    expect((await patch(address, 5000, text.slice(5000))).status).toBe(204);
    const answer = await takeIn(uploadId);
    expect(answer.statusCode).toBe(201);
    const log = answer.json() as Log;
    expect(log).toMatchObject({
      fileName: 'morning run.csv',
      byteCount: text.length,
      alreadyOnRecord: false,
    });
    expect((await shop.app.objects.get(log.sha256)).toString('utf8')).toBe(text);
    expect(filesLeft()).toEqual([]);
    expect((await takeIn(uploadId)).statusCode).toBe(404);
  });

  it('gives the log on record for a file that came before', async () => {
    const text = testLog([{ peakKpa: 58 }]);
    const first = (await takeIn(await upload(text))).json() as Log;
    const second = await takeIn(await upload(text));
    expect(second.statusCode).toBe(200);
    expect(second.json()).toMatchObject({ id: first.id, alreadyOnRecord: true });
  });

  it('shows what its columns seem to hold, and stays until somebody has said it', async () => {
    const id = await upload(testLog([{ peakKpa: 58 }], 'P3 sensor'));
    expect((await takeIn(id)).statusCode).toBe(422);
    const shown = await look(id);
    expect(shown.problem).toBeNull();
    expect(shown.columns.map(({ quantity, unit }) => [quantity, unit])).toEqual([
      ['time', 's'],
      ['engine-speed', 'rpm'],
      ['throttle', 'pct'],
      ['unknown', null],
    ]);
    expect(shown.columns[3]?.samples).toContain('-40.0');
    const reading = { columns: [{ header: 'P3 sensor', quantity: 'boost-pressure', unit: 'kPa' }] };
    expect((await look(id, { reading })).columns[3]?.quantity).toBe('boost-pressure');
    expect((await takeIn(id, { reading })).json().analysis.pulls).toHaveLength(1);
  });

  it('shows the lines of a file that no table can be made of', async () => {
    const shown = await look(await upload('nothing\nto see\n'));
    expect(shown).toMatchObject({ shape: null, lines: ['nothing', 'to see', ''] });
    expect(shown.problem).toContain('no rows of numbers');
  });

  it('is refused at its start when it is over a gigabyte', async () => {
    expect((await create(2 ** 30 + 1)).status).toBe(413);
    // Asked in turn behind the store's own opening of its folder, which must not outlive the test.
    expect(await readdir(shop.app.objects.uploadsFolder)).toEqual([]);
  });

  it('is nobody else’s: not of another workshop, not of the desk, not of a passer-by', async () => {
    const text = testLog([{ peakKpa: 58 }]);
    const address = (await create(text.length)).headers.get('location') ?? '';
    const id = address.split('/').at(-1) ?? '';
    expect((await ask('HEAD', address, { person: shop.stranger })).status).toBe(404);
    expect((await patch(address, 0, text, shop.stranger)).status).toBe(404);
    expect((await takeIn(id, {}, shop.stranger)).statusCode).toBe(404);
    expect((await create(10, { person: shop.desk })).status).toBe(403);
    expect((await ask('POST', '/api/v1/uploads', { headers: { cookie: '' } })).status).toBe(401);
    expect((await ask('DELETE', address)).status).toBe(204);
    expect(filesLeft()).toEqual([]);
  });
});

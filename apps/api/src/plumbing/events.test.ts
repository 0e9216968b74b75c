import type { AddressInfo } from 'node:net';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { openTestWorkshop, type TestPerson, type TestWorkshop } from './test-workshop.js';

let shop: TestWorkshop;
let origin: string;
beforeEach(async () => {
  shop = await openTestWorkshop();
  await shop.app.listen({ port: 0, host: '127.0.0.1' });
  origin = `http://127.0.0.1:${(shop.app.server.address() as AddressInfo).port}`;
});
afterEach(() => shop.close());

interface Stream {
  readonly response: Response;
  /** Text of the stream up to and with a piece. */
  readonly until: (piece: string) => Promise<string>;
  readonly rest: () => Promise<string>;
}

async function listen(person: TestPerson): Promise<Stream> {
  const response = await fetch(`${origin}/api/v1/events`, { headers: { cookie: person.cookie } });
  const reader = response.body?.getReader();
  if (!reader) throw new Error('no stream');
  let text = '';
  const read = async (isEnough: () => boolean): Promise<string> => {
    while (!isEnough()) {
      const { done, value } = await reader.read();
      if (done) break;
      text += Buffer.from(value).toString();
    }
    return text;
  };
  return { response, until: (piece) => read(() => text.includes(piece)), rest: () => read(() => false) };
}

test('GET /events tells everybody of the workshop which record changed', async () => {
  const { response, until } = await listen(shop.tuner);
  expect(response.headers.get('content-type')).toBe('text/event-stream; charset=utf-8');
  expect(response.headers.get('cache-control')).toContain('no-transform');
  await until('retry');
  const made = (await shop.desk.ask('POST', '/customers', { payload: { name: 'New' } })).json();
  const event = { noun: 'customer', id: made.id, visitId: null };
  expect(await until(made.id)).toContain(`event: change\ndata: ${JSON.stringify(event)}\n\n`);
});

test('GET /events tells no other workshop', async () => {
  const { until } = await listen(shop.stranger);
  await until('retry');
  await shop.desk.ask('POST', '/customers', { payload: { name: 'Ours' } });
  const theirs = (await shop.stranger.ask('POST', '/customers', { payload: { name: 'Theirs' } })).json();
  const text = await until('change');
  expect(text.match(/event: change/g)).toHaveLength(1);
  expect(await until(theirs.id)).toContain(theirs.id);
});

test('GET /events ends when the server closes, so that closing does not wait for it', async () => {
  const { until, rest } = await listen(shop.tuner);
  await until('retry');
  await shop.app.close();
  expect(await rest()).not.toContain('event: change');
});

test('GET /events without a sign-in is refused', async () => {
  expect((await fetch(`${origin}/api/v1/events`)).status).toBe(401);
});

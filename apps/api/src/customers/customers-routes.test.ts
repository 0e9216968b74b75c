import { gunzipSync } from 'node:zlib';
import { afterAll, beforeAll, expect, test, vi } from 'vitest';
import { openTestWorkshop, type TestWorkshop } from '../plumbing/test-workshop.js';

let shop: TestWorkshop;
beforeAll(async () => {
  shop = await openTestWorkshop();
});
afterAll(() => shop.close());

const create = (payload: object, headers = {}) => shop.desk.ask('POST', '/customers', { payload, headers });
const match = (revision: number) => ({ 'if-match': `"${revision}"` });

test('POST /customers takes a customer in, trimmed, and answers with the revision', async () => {
  const answer = await create({
    name: '  Nora Novak ',
    phone: '+44 20 7946 0000',
    email: 'Nora@example.org',
  });
  expect(answer.statusCode).toBe(201);
  expect(answer.headers['etag']).toBe('"1"');
  expect(answer.json()).toMatchObject({ name: 'Nora Novak', carCount: 0, note: '', revision: 1 });
  const stored = await shop.desk.ask('GET', `/customers/${answer.json().id}`);
  expect(stored.json()).toEqual(answer.json());
});

test.each([
  [{ name: '' }, 'name', 'must not be empty'],
  [{}, 'name', 'is missing'],
  [{ name: 7 }, 'name', 'must be text'],
  [{ name: 'A', email: 'nobody' }, 'email', 'must be a mail address'],
  [{ name: 'A'.repeat(121) }, 'name', 'must have at most 120 characters'],
])('POST /customers with %j says what is wrong', async (payload, field, message) => {
  const answer = await create(payload);
  expect(answer.statusCode).toBe(400);
  expect(answer.json()).toMatchObject({ code: 'invalid-request', errors: [{ field, message }] });
  expect(answer.json().detail).toBe(`${field} ${message}`);
});

test('POST /customers without a sign-in is refused', async () => {
  const answer = await shop.app.inject({ method: 'POST', url: '/api/v1/customers', payload: { name: 'A' } });
  expect(answer.json()).toMatchObject({ status: 401, code: 'not-signed-in' });
});

test('GET /customers finds every word of what was typed, in name, telephone and mail address', async () => {
  await create({ name: 'Søren Åkesson', phone: '0170/555 01', email: 'soren@example.org' });
  const find = async (q: string) =>
    (await shop.desk.ask('GET', '/customers', { query: { q } }))
      .json()
      .items.map((item: { name: string }) => item.name);
  expect(await find('AKESSON soren')).toEqual(['Søren Åkesson']);
  expect(await find('0170555')).toEqual(['Søren Åkesson']);
  expect(await find('@example akesson')).toEqual(['Søren Åkesson']);
  expect(await find('akesson nora')).toEqual([]);
});

test('GET /customers pages through all of them in order, each once', async () => {
  for (const letter of 'EDCBA') await create({ name: `Page ${letter}` });
  const names: string[] = [];
  let cursor: string | null = null;
  do {
    const query: Record<string, string> = { q: 'page', limit: '2', ...(cursor ? { cursor } : {}) };
    const page = (await shop.desk.ask('GET', '/customers', { query })).json();
    names.push(...page.items.map((item: { name: string }) => item.name));
    cursor = page.nextCursor;
  } while (cursor);
  expect(names).toEqual(['Page A', 'Page B', 'Page C', 'Page D', 'Page E']);
});

test.each([
  ['limit=ten', 'limit', 'must be a number'],
  ['limit=1000', 'limit', 'must be at most 200'],
  ['cursor=made-up', 'cursor', 'must be the nextCursor of the page before'],
])('GET /customers?%s says what is wrong', async (query, field, message) => {
  const answer = await shop.desk.ask('GET', `/customers?${query}`);
  expect(answer.json()).toMatchObject({ status: 400, errors: [{ field, message }] });
});

test('PATCH /customers/{id} changes what is named, keeps the rest and raises the revision', async () => {
  const made = (await create({ name: 'Before', phone: '1' })).json();
  const answer = await shop.desk.ask('PATCH', `/customers/${made.id}`, {
    payload: { name: 'After' },
    headers: match(1),
  });
  expect(answer.json()).toEqual({ ...made, name: 'After', revision: 2 });
  const found = await shop.desk.ask('GET', '/customers?q=after');
  expect(found.json().items).toHaveLength(1);
});

test('PATCH /customers/{id} needs the revision that was seen, and refuses an old one', async () => {
  const { id } = (await create({ name: 'Raced' })).json();
  const change = (name: string, headers: object) =>
    shop.desk.ask('PATCH', `/customers/${id}`, { payload: { name }, headers: { ...headers } });
  expect((await change('X', {})).json()).toMatchObject({ status: 428, code: 'precondition-missing' });
  expect((await change('X', { 'if-match': 'W/"x"' })).json()).toMatchObject({ status: 400 });
  const both = await Promise.all([change('One', match(1)), change('Two', match(1))]);
  expect(both.map((answer) => answer.statusCode).sort()).toEqual([200, 412]);
  const stored = (await shop.desk.ask('GET', `/customers/${id}`)).json();
  expect(stored.revision).toBe(2);
  expect(stored.name).toBe(both[0].statusCode === 200 ? 'One' : 'Two');
});

test('customers of one workshop are not found from another', async () => {
  const { id } = (await create({ name: 'Ours alone' })).json();
  const asks = [
    shop.stranger.ask('GET', `/customers/${id}`),
    shop.stranger.ask('PATCH', `/customers/${id}`, { payload: { name: 'Taken' }, headers: match(1) }),
  ];
  for (const answer of await Promise.all(asks)) expect(answer.json()).toMatchObject({ status: 404 });
  expect((await shop.stranger.ask('GET', '/customers')).json().items).toEqual([]);
});

test('GET /customers/{id} of nobody is 404, and of no id 400', async () => {
  const nobody = await shop.desk.ask('GET', '/customers/019aa5b0-0000-7000-8000-000000000000');
  expect(nobody.json()).toMatchObject({ status: 404, code: 'not-found' });
  expect((await shop.desk.ask('GET', '/customers/7')).json()).toMatchObject({
    status: 400,
    errors: [{ field: 'id', message: 'must be an id' }],
  });
});

test('an Idempotency-Key makes one customer, and the same reply again', async () => {
  const headers = { 'idempotency-key': 'phone-1-customer-1' };
  const first = await create({ name: 'Once only' }, headers);
  const second = await create({ name: 'Once only' }, headers);
  expect([first.statusCode, second.statusCode]).toEqual([201, 201]);
  expect(second.body).toBe(first.body);
  expect(second.headers).toMatchObject({ etag: '"1"', 'idempotency-replayed': 'true' });
  expect((await shop.desk.ask('GET', '/customers?q=once')).json().items).toHaveLength(1);
});

test('an Idempotency-Key holds for a long reply that goes out compressed', async () => {
  const headers = { 'idempotency-key': 'phone-1-customer-7', 'accept-encoding': 'gzip' };
  const payload = { name: 'Long reply', note: 'n'.repeat(2000) };
  const first = await create(payload, headers);
  expect(first.headers['content-encoding']).toBe('gzip');
  const second = await create(payload, headers);
  expect(second.headers['idempotency-replayed']).toBe('true');
  const read = (answer: { rawPayload: Buffer }) => JSON.parse(gunzipSync(answer.rawPayload).toString());
  expect(read(second)).toEqual(read(first));
  expect((await shop.desk.ask('GET', '/customers?q=longreply')).json().items).toHaveLength(1);
});

test('an Idempotency-Key holds though the reply went wrong after the record was made', async () => {
  const headers = { 'idempotency-key': 'phone-1-customer-8' };
  const announce = vi.spyOn(shop.app, 'announce').mockImplementationOnce(() => {
    throw new Error('the line broke');
  });
  expect((await create({ name: 'Made all the same' }, headers)).statusCode).toBe(500);
  announce.mockRestore();
  expect((await create({ name: 'Made all the same' }, headers)).statusCode).toBe(409);
  expect((await shop.desk.ask('GET', '/customers?q=madeall')).json().items).toHaveLength(1);
});

test('an Idempotency-Key with another body is refused with 422', async () => {
  const headers = { 'idempotency-key': 'phone-1-customer-2' };
  await create({ name: 'Body one' }, headers);
  expect((await create({ name: 'Body two' }, headers)).json()).toMatchObject({
    status: 422,
    code: 'idempotency-key-reused',
  });
});

test('two requests with one Idempotency-Key at once make one customer', async () => {
  const headers = { 'idempotency-key': 'phone-1-customer-3' };
  const many = await Promise.all(Array.from({ length: 5 }, () => create({ name: 'At once' }, headers)));
  const statuses = many.map((answer) => answer.statusCode);
  expect(statuses).toContain(201);
  expect(statuses.every((status) => status === 201 || status === 409)).toBe(true);
  expect((await shop.desk.ask('GET', '/customers?q=atonce')).json().items).toHaveLength(1);
});

test('a refused request does not use up its Idempotency-Key', async () => {
  const headers = { 'idempotency-key': 'phone-1-customer-4' };
  const change = { name: 'Car', plate: 'X 1', model: 'Estate', customerId: shop.desk.memberId };
  const refused = await shop.desk.ask('POST', '/cars', { payload: change, headers });
  expect(refused.statusCode).toBe(404);
  const { id } = (await create({ name: 'Owner of a car' })).json();
  const again = await shop.desk.ask('POST', '/cars', { payload: { ...change, customerId: id }, headers });
  expect(again.statusCode).toBe(201);
});

test('after a crash in the middle, an Idempotency-Key neither doubles what was made nor blocks what was not', async () => {
  const { db, memberId } = shop.desk.actor;
  const requestHash = async (key: string, name: string) => {
    await create({ name }, { 'idempotency-key': key });
    const row = await db.keptReply.findFirstOrThrow({ where: { memberId, key } });
    return row;
  };
  const made = await requestHash('phone-1-customer-5', 'Made before the crash');
  await db.keptReply.update({ where: { id: made.id }, data: { status: null, body: null } });
  const lost = await requestHash('phone-1-customer-6', 'Lost in the crash');
  await db.keptReply.update({
    where: { id: lost.id },
    data: { status: null, body: null, madeRecordId: null },
  });
  const retry = (name: string, key: string) => create({ name }, { 'idempotency-key': key });
  expect((await retry('Lost in the crash', 'phone-1-customer-6')).statusCode).toBe(409);
  shop.clock.advance(180);
  expect((await retry('Made before the crash', 'phone-1-customer-5')).json()).toMatchObject({
    status: 409,
    detail: expect.stringContaining(made.madeRecordId ?? 'nothing'),
  });
  expect((await retry('Lost in the crash', 'phone-1-customer-6')).statusCode).toBe(201);
});

test('every change leaves a line in the records, with who did it', async () => {
  const { id } = (await create({ name: 'Recorded' })).json();
  const lines = await shop.desk.actor.db.auditEvent.findMany({ where: { recordId: id } });
  expect(lines).toMatchObject([
    { action: 'customer-created', by: 'Dana Desk', summary: 'took in the customer Recorded' },
  ]);
});

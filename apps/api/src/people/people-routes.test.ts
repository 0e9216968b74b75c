import { afterEach, beforeEach, expect, test } from 'vitest';
import { openTestWorkshop, testPassword, type TestWorkshop } from '../plumbing/test-workshop.js';

let shop: TestWorkshop;
beforeEach(async () => {
  shop = await openTestWorkshop({ firstOwnerCode: 'ABCD-EFGH' });
});
afterEach(() => shop.close());

const signIn = (payload: object, headers: Record<string, string> = {}) =>
  shop.app.inject({ method: 'POST', url: '/api/v1/sign-in', payload, headers });
const cookieOf = (answer: { headers: Record<string, unknown> }): string =>
  String(answer.headers['set-cookie']).split(';')[0] ?? '';

test('POST /sign-in lets a member in and sets a cookie that no script and no other site can use', async () => {
  const answer = await signIn({ email: shop.tuner.email.toUpperCase(), password: testPassword });
  expect(answer.statusCode).toBe(200);
  expect(answer.json()).toMatchObject({ member: { id: shop.tuner.memberId, role: 'tuner' }, demo: false });
  expect(answer.headers['set-cookie']).toMatch(/HttpOnly; SameSite=Lax/);
  const me = await shop.app.inject({ url: '/api/v1/me', headers: { cookie: cookieOf(answer) } });
  expect(me.json()).toMatchObject({ member: { name: 'Tomas Tuner' }, workshop: { name: 'Test workshop' } });
});

test('POST /sign-in answers an unknown address and a wrong password alike', async () => {
  const wrong = await signIn({ email: shop.tuner.email, password: 'not this one' });
  const unknown = await signIn({ email: 'nobody@example.org', password: 'not this one' });
  for (const answer of [wrong, unknown]) {
    expect(answer.statusCode).toBe(401);
    expect(answer.headers['content-type']).toContain('application/problem+json');
    expect(answer.json()).toMatchObject({ code: 'wrong-email-or-password', status: 401 });
  }
  expect(wrong.json().detail).toBe(unknown.json().detail);
});

test('POST /sign-in names each wrong field', async () => {
  const answer = await signIn({ email: 'no address' });
  expect(answer.statusCode).toBe(400);
  expect(answer.json().errors).toEqual([
    { field: 'email', message: 'must be a mail address' },
    { field: 'password', message: 'is missing' },
  ]);
});

test('POST /sign-in stops guessing at one person after ten failures, even with the right password', async () => {
  for (let attempt = 0; attempt < 10; attempt += 1) {
    expect((await signIn({ email: shop.desk.email, password: `guess ${attempt}` })).statusCode).toBe(401);
  }
  const stopped = await signIn({ email: shop.desk.email, password: testPassword });
  expect(stopped.statusCode).toBe(429);
  expect(stopped.json()).toMatchObject({ code: 'too-many-requests' });
  const colleague = await signIn({ email: shop.tuner.email, password: testPassword });
  expect(colleague.statusCode).toBe(200);
});

test('POST /sign-in lets a burst of guesses at one person try no more than ten', async () => {
  const burst = Array.from({ length: 40 }, (_, index) =>
    signIn({ email: shop.desk.email, password: `guess ${index}` }),
  );
  const statuses = (await Promise.all(burst)).map((answer) => answer.statusCode);
  expect(statuses.filter((status) => status === 401)).toHaveLength(10);
  expect(statuses.filter((status) => status === 429)).toHaveLength(30);
});

test('POST /sign-in does not hinder a whole workshop that signs in from one address', async () => {
  const statuses: number[] = [];
  for (let round = 0; round < 60; round += 1) {
    const person = [shop.owner, shop.tuner, shop.desk][round % 3] ?? shop.owner;
    statuses.push((await signIn({ email: person.email, password: testPassword })).statusCode);
  }
  expect(new Set(statuses)).toEqual(new Set([200]));
});

test('POST /sign-in from a page of another site is refused', async () => {
  const body = { email: shop.tuner.email, password: testPassword };
  expect((await signIn(body, { origin: 'http://elsewhere.example' })).statusCode).toBe(403);
  expect((await signIn(body, { 'sec-fetch-site': 'cross-site' })).statusCode).toBe(403);
  expect((await signIn(body, { origin: 'http://localhost:3000', host: 'localhost:3000' })).statusCode).toBe(
    200,
  );
  const proxied = { host: '127.0.0.1:3001', 'x-forwarded-host': 'book.example' };
  expect((await signIn(body, { ...proxied, origin: 'https://book.example' })).statusCode).toBe(200);
  expect((await signIn(body, { ...proxied, origin: 'http://elsewhere.example' })).statusCode).toBe(403);
});

test('practice accounts cannot sign in where a real workshop is served', async () => {
  await shop.database.client.workshop.updateMany({ data: { isDemo: true } });
  expect((await signIn({ email: shop.owner.email, password: testPassword })).statusCode).toBe(401);
  expect((await shop.owner.ask('GET', '/me')).statusCode).toBe(401);
});

test('in demo mode only this machine’s own names are answered', async () => {
  const demo = await openTestWorkshop({ mode: 'demo' });
  const ask = (host: string) => demo.app.inject({ url: '/api/v1/setup', headers: { host } });
  expect((await ask('127.0.0.1:3000')).json()).toEqual({ needsFirstOwner: false, demo: true });
  expect((await ask('rebound.example:3000')).statusCode).toBe(403);
  await demo.close();
});

test('POST /sign-out ends this browser’s sign-in and no other', async () => {
  const other = await signIn({ email: shop.tuner.email, password: testPassword });
  expect((await shop.tuner.ask('POST', '/sign-out')).statusCode).toBe(204);
  expect((await shop.tuner.ask('GET', '/me')).statusCode).toBe(401);
  const me = await shop.app.inject({ url: '/api/v1/me', headers: { cookie: cookieOf(other) } });
  expect(me.statusCode).toBe(200);
});

test('a sign-in runs out after a fortnight', async () => {
  const cookie = cookieOf(await signIn({ email: shop.tuner.email, password: testPassword }));
  shop.clock.advance(14 * 24 * 3600 + 1);
  const me = await shop.app.inject({ url: '/api/v1/me', headers: { cookie } });
  expect(me.json()).toMatchObject({ status: 401, code: 'not-signed-in' });
});

test('PATCH /me sets the units that one person reads in, and no one else’s', async () => {
  const units = { pressure: 'psi', temperature: 'F' };
  expect((await shop.tuner.ask('PATCH', '/me', { payload: { units } })).json().units).toEqual(units);
  expect((await shop.desk.ask('GET', '/me')).json().units).toEqual({ pressure: 'kPa', temperature: 'C' });
});

test('POST /first-owner founds the workshop once, with the printed code only', async () => {
  const body = {
    code: 'abcd-efgh',
    workshopName: 'New workshop',
    name: 'First',
    email: 'first@example.org',
    password: 'long enough to pass',
  };
  const ask = (payload: object) => shop.app.inject({ method: 'POST', url: '/api/v1/first-owner', payload });
  expect((await ask(body)).json()).toMatchObject({ status: 409, code: 'conflict' });
  await shop.database.client.workshop.updateMany({ data: { isDemo: true } });
  expect((await shop.app.inject({ url: '/api/v1/setup' })).json()).toEqual({
    needsFirstOwner: true,
    demo: false,
  });
  expect((await ask({ ...body, code: 'WRONG-CODE' })).json()).toMatchObject({
    status: 403,
    errors: [{ field: 'code' }],
  });
  const [first, second] = await Promise.all([ask(body), ask({ ...body, email: 'second@example.org' })]);
  expect([first.statusCode, second.statusCode].sort()).toEqual([201, 409]);
  expect((await shop.app.inject({ url: '/api/v1/setup' })).json().needsFirstOwner).toBe(false);
  expect((await signIn(body)).statusCode).toBe(200);
});

test('GET /health says that the book can be read', async () => {
  const answer = await shop.app.inject({ url: '/api/v1/health' });
  expect(answer.json()).toEqual({ status: 'ok', version: '0.1.0', database: 'sqlite' });
});

test('PATCH /me keeps where one person’s first tour is, over for good with null, and refuses a change of nothing', async () => {
  const tourOf = async (who: typeof shop.tuner) => (await who.ask('GET', '/me')).json().tourStep as unknown;
  const before = await tourOf(shop.desk);
  await shop.tuner.ask('PATCH', '/me', { payload: { tourStep: 0 } });
  expect((await shop.tuner.ask('PATCH', '/me', { payload: { tourStep: 3 } })).json().tourStep).toBe(3);
  expect(await tourOf(shop.tuner)).toBe(3);
  expect(await tourOf(shop.desk)).toBe(before);
  await shop.tuner.ask('PATCH', '/me', { payload: { tourStep: null } });
  expect(await tourOf(shop.tuner)).toBeNull();
  for (const payload of [{}, { tourStep: -1 }, { tourStep: 1.5 }])
    expect((await shop.tuner.ask('PATCH', '/me', { payload })).statusCode).toBe(400);
});

test('PATCH /me takes a step of the tour that arrives late for no new one: not back, and not after its end', async () => {
  const sent = async (tourStep: number | null) =>
    (await shop.tuner.ask('PATCH', '/me', { payload: { tourStep } })).json().tourStep as unknown;
  expect([await sent(0), await sent(4), await sent(2), await sent(null), await sent(5)]).toEqual([
    0,
    4,
    4,
    null,
    null,
  ]);
  expect(await sent(0)).toBe(0);
});

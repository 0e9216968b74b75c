import { afterEach, beforeEach, expect, test } from 'vitest';
import {
  openTestWorkshop,
  testPassword,
  type TestPerson,
  type TestWorkshop,
} from '../plumbing/test-workshop.js';

let shop: TestWorkshop;
beforeEach(async () => {
  shop = await openTestWorkshop();
});
afterEach(() => shop.close());

const ada = { name: 'Ada New', email: 'Ada@example.org', role: 'tuner', password: 'long enough to pass' };
const match = (revision: number) => ({ 'if-match': `"${revision}"` });
const change = (who: TestPerson, id: string, payload: object, revision = 1) =>
  who.ask('PATCH', `/team/${id}`, { payload, headers: match(revision) });

test('POST /team takes somebody in, who can then sign in', async () => {
  const answer = await shop.owner.ask('POST', '/team', { payload: ada });
  expect(answer.statusCode).toBe(201);
  expect(answer.json()).toMatchObject({
    name: 'Ada New',
    email: 'ada@example.org',
    role: 'tuner',
    active: true,
  });
  expect(answer.body).not.toMatch(/hash|argon2/i);
  const signedIn = await shop.app.inject({
    method: 'POST',
    url: '/api/v1/sign-in',
    payload: { email: ada.email, password: ada.password },
  });
  expect(signedIn.statusCode).toBe(200);
  const team = (await shop.desk.ask('GET', '/team')).json();
  expect(team.items.map((item: { name: string }) => item.name)).toEqual([
    'Ada New',
    'Dana Desk',
    'Olga Owner',
    'Tomas Tuner',
  ]);
  expect(team.nextCursor).toBeNull();
});

test('POST /team refuses a mail address that is taken, and a short password, naming the field', async () => {
  await shop.owner.ask('POST', '/team', { payload: ada });
  const taken = await shop.owner.ask('POST', '/team', { payload: { ...ada, email: 'ADA@example.org' } });
  expect(taken.json()).toMatchObject({ status: 409, errors: [{ field: 'email', message: 'is taken' }] });
  const short = await shop.owner.ask('POST', '/team', { payload: { ...ada, password: 'short' } });
  expect(short.json()).toMatchObject({
    status: 400,
    errors: [{ field: 'password', message: 'must have at least 10 characters' }],
  });
});

test('only the owner changes the team and the rules', async () => {
  for (const person of [shop.tuner, shop.desk]) {
    const answers = [
      await person.ask('POST', '/team', { payload: ada }),
      await change(person, shop.desk.memberId, { role: 'owner' }),
      await person.ask('PATCH', '/workshop', { payload: { stepLimit: 5 }, headers: match(1) }),
    ];
    for (const answer of answers) expect(answer.json()).toMatchObject({ status: 403, code: 'not-allowed' });
  }
});

test('PATCH /team/{id} lets somebody go: signed out everywhere at once, tokens ended', async () => {
  const token = (await shop.tuner.ask('POST', '/tokens', { payload: { name: 'Logger' } })).json();
  const gone = await change(shop.owner, shop.tuner.memberId, { active: false });
  expect(gone.json()).toMatchObject({ active: false, revision: 2 });
  expect((await shop.tuner.ask('GET', '/me')).statusCode).toBe(401);
  const bearer = { authorization: `Bearer ${token.secret}` };
  expect((await shop.app.inject({ url: '/api/v1/me', headers: bearer })).statusCode).toBe(401);
  const again = await shop.app.inject({
    method: 'POST',
    url: '/api/v1/sign-in',
    payload: { email: shop.tuner.email, password: testPassword },
  });
  expect(again.statusCode).toBe(401);
});

test('PATCH /team/{id} keeps at least one owner', async () => {
  expect((await change(shop.owner, shop.owner.memberId, { role: 'desk' })).json()).toMatchObject({
    status: 409,
    code: 'conflict',
  });
  expect((await shop.owner.ask('GET', '/me')).json().member).toMatchObject({ role: 'owner', revision: 1 });
  await change(shop.owner, shop.tuner.memberId, { role: 'owner' });
  expect((await change(shop.owner, shop.owner.memberId, { role: 'desk' })).statusCode).toBe(200);
});

test('PATCH /workshop keeps a paper header, refuses lines that do not fit, and the tuner and the desk', async () => {
  const paperHeader = {
    addressLines: ['Kiln Lane 14', '0042 Harrowmere'],
    phone: '+00 555 0100',
    online: 'desk@harbour-road.example',
    registration: '',
    foot: 'Closed courses only.',
    paper: 'letter',
    timeZone: 'Europe/Vienna',
  };
  const change = (header: object, person = shop.owner) =>
    person.ask('PATCH', '/workshop', { payload: { paperHeader: header }, headers: match(1) });
  expect((await change(paperHeader, shop.tuner)).statusCode).toBe(403);
  expect((await change(paperHeader, shop.desk)).statusCode).toBe(403);
  expect((await change({ ...paperHeader, phone: 'a\nb' })).statusCode).toBe(400);
  expect((await change({ ...paperHeader, foot: 'x'.repeat(161) })).statusCode).toBe(400);
  expect((await change({ ...paperHeader, addressLines: ['1', '2', '3', '4', '5'] })).statusCode).toBe(400);
  expect((await change({ ...paperHeader, timeZone: 'Nowhere/At_All' })).statusCode).toBe(400);
  const answer = await change(paperHeader);
  expect(answer.headers['etag']).toBe('"2"');
  expect((await shop.desk.ask('GET', '/workshop')).json().paperHeader).toEqual(paperHeader);
  expect((await shop.stranger.ask('GET', '/workshop')).json().paperHeader.addressLines).toEqual([]);
  expect(
    await shop.owner.actor.db.auditEvent.findFirst({ where: { summary: 'changed the paper header' } }),
  ).not.toBeNull();
});

test('PATCH /team/{id} refuses an old revision, and finds nobody of another workshop', async () => {
  await change(shop.owner, shop.desk.memberId, { name: 'Dana D.' });
  expect((await change(shop.owner, shop.desk.memberId, { name: 'Late' })).json()).toMatchObject({
    status: 412,
  });
  expect((await change(shop.stranger, shop.desk.memberId, { name: 'Taken' }, 2)).json()).toMatchObject({
    status: 404,
  });
});

test('a token acts as the person who made it, from a program without cookie, until it is ended', async () => {
  const made = (await shop.tuner.ask('POST', '/tokens', { payload: { name: 'Logger' } })).json();
  const headers = { authorization: `Bearer ${made.secret}` };
  const me = await shop.app.inject({ url: '/api/v1/me', headers });
  expect(me.json().member).toMatchObject({ id: shop.tuner.memberId });
  const listed = (await shop.tuner.ask('GET', '/tokens')).json().items;
  expect(listed).toMatchObject([{ id: made.id, name: 'Logger', lastUsedAt: '2026-11-25T09:00:00.000Z' }]);
  expect(JSON.stringify(listed)).not.toContain(made.secret);
  expect((await shop.owner.ask('GET', '/tokens')).json().items).toEqual([]);
  expect((await shop.owner.ask('DELETE', `/tokens/${made.id}`)).statusCode).toBe(404);
  expect((await shop.tuner.ask('DELETE', `/tokens/${made.id}`)).json().revokedAt).not.toBeNull();
  expect((await shop.app.inject({ url: '/api/v1/me', headers })).statusCode).toBe(401);
});

test('POST /tokens keeps no secret for an Idempotency-Key', async () => {
  const headers = { 'idempotency-key': 'token-key-1' };
  const { secret } = (await shop.tuner.ask('POST', '/tokens', { payload: { name: 'A' }, headers })).json();
  const kept = await shop.database.client.keptReply.findMany();
  expect(JSON.stringify(kept)).not.toContain(secret);
});

test('PATCH /workshop changes the rules within what is safe', async () => {
  const before = await shop.owner.ask('GET', '/workshop');
  expect(before.headers['etag']).toBe('"1"');
  const payload = { stepLimit: 5, units: { pressure: 'bar', temperature: 'C' } };
  const answer = await shop.owner.ask('PATCH', '/workshop', { payload, headers: match(1) });
  expect(answer.json()).toMatchObject({ ...payload, riskLimit: 0.02, revision: 2 });
  const unsafe = await shop.owner.ask('PATCH', '/workshop', {
    payload: { stepLimit: 20 },
    headers: match(2),
  });
  expect(unsafe.json()).toMatchObject({
    status: 400,
    errors: [{ field: 'stepLimit', message: 'must be at most 10' }],
  });
  expect((await shop.owner.ask('PATCH', '/workshop', { payload, headers: match(1) })).statusCode).toBe(412);
});

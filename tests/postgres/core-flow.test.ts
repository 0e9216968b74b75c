import { openTestWorkshop, type TestPerson, type TestWorkshop } from '@pullbook/api';
import { readinessKeys } from '@pullbook/contracts';
import { migrate, openDatabase, schemaDrift, scopeToWorkshop } from '@pullbook/database';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { startPostgres, type PostgresServer } from './start-postgres.js';

let server: PostgresServer;
let url: string;
let shop: TestWorkshop;
beforeAll(async () => {
  server = await startPostgres();
  url = await server.newDatabase();
  shop = await openTestWorkshop({ url });
});
afterAll(async () => {
  await shop?.close();
  await server?.stop();
});

const post = async (who: TestPerson, path: string, payload: object, headers: Record<string, string> = {}) => {
  const answer = await who.ask('POST', path, { payload, headers });
  if (answer.statusCode >= 300) throw new Error(`POST ${path}: ${answer.body}`);
  return answer.json();
};
const patch = (who: TestPerson, path: string, payload: object, revision: number) =>
  who.ask('PATCH', path, { payload, headers: { 'if-match': `"${revision}"` } });

const controller = {
  name: 'Three slots',
  presetSlots: 3,
  hasTimedOverride: false,
  loop: 'open',
  dutyPct: { min: 0, max: 90, step: 1 },
  holdPct: null,
  correction: null,
};
const intake = (plate: string) => ({
  customer: { name: `Customer of ${plate}`, phone: '0170 555 0123' },
  car: { plate, model: 'Estate, 2.0 turbo' },
  visit: { stage: 'arrived' },
  wantedPresets: [{ name: 'Road', targetKpa: 120 }],
});

/** A car on test, with goal agreed and readiness check passed. */
async function carOnTest(plate: string) {
  const made = await post(shop.desk, '/intakes', intake(plate));
  const { id: controllerId } = await post(shop.tuner, '/controllers', controller);
  await patch(shop.tuner, `/cars/${made.carId}`, { controllerId }, 1);
  const presetId: string = made.presetIds[0];
  await patch(shop.tuner, `/presets/${presetId}`, { ceilingKpa: 135, reason: 'agreed' }, 1);
  const session = await post(shop.tuner, `/visits/${made.visitId}/tuning-sessions`, {
    placeKind: 'dyno-cell',
    place: 'Cell 1',
    driver: 'Dora Driver',
    passenger: 'Tomas Tuner',
  });
  const readiness = await shop.tuner.ask('PUT', `/tuning-sessions/${session.id}/readiness-check`, {
    payload: { items: readinessKeys.map((key) => ({ key, ok: true })), overBoostCutKpa: 150 },
    headers: { 'if-match': `"${session.revision}"` },
  });
  expect(readiness.statusCode).toBe(200);
  return { ...made, presetId, sessionId: session.id as string };
}

test('the migrations make on PostgreSQL exactly what the models say, and are applied once', async () => {
  expect(await schemaDrift(url)).toBeNull();
  expect(await migrate(url)).toEqual([]);
  const health = await shop.app.inject({ url: '/api/v1/health' });
  expect(health.json()).toMatchObject({ status: 'ok', database: 'postgresql' });
});

test('the core of the work runs on PostgreSQL: intake, readiness, pulls by the advice, board', async () => {
  const car = await carOnTest('PG 1');
  const nextPull = async () =>
    (
      await shop.tuner.ask('GET', `/tuning-sessions/${car.sessionId}/next-pull?presetId=${car.presetId}`)
    ).json();
  for (let pull = 1; pull <= 3; pull += 1) {
    const { advice } = await nextPull();
    expect(['pull', 'repeat']).toContain(advice.action);
    const recorded = await post(shop.tuner, `/tuning-sessions/${car.sessionId}/pulls`, {
      presetId: car.presetId,
      dutyPct: advice.duty,
      peakKpa: 50 + advice.duty,
    });
    expect(recorded).toMatchObject({ number: pull, presetRevision: 2, recordedBy: 'Tomas Tuner' });
  }
  const { advice } = await nextPull();
  const { cards } = (await shop.desk.ask('GET', '/board')).json();
  const card = cards.find((candidate: { visitId: string }) => candidate.visitId === car.visitId);
  expect(card).toMatchObject({ stage: 'on-test', plate: 'PG 1' });
  expect(card.status).toContain(`${advice.duty} %`);
  expect(card.presets[0].strip.pulls.map((pull: { number: number }) => pull.number)).toEqual([1, 2, 3]);
});

test('pulls sent at once get running numbers without gaps, and none is lost', async () => {
  const car = await carOnTest('PG 2');
  const send = () =>
    post(shop.tuner, `/tuning-sessions/${car.sessionId}/pulls`, {
      presetId: car.presetId,
      dutyPct: 8,
      peakKpa: 58.5,
    });
  const pulls = await Promise.all(Array.from({ length: 8 }, send));
  expect(pulls.map((pull) => pull.number).sort((a, b) => a - b)).toEqual([1, 2, 3, 4, 5, 6, 7, 8]);
});

test('visits booked at once get running numbers without gaps', async () => {
  const { carId } = await post(shop.desk, '/intakes', intake('PG 3'));
  const visits = await Promise.all(Array.from({ length: 8 }, () => post(shop.desk, '/visits', { carId })));
  const numbers = visits.map((visit) => visit.number).sort((a, b) => a - b);
  expect(numbers).toEqual(numbers.map((_, index) => numbers[0] + index));
});

test('of two changes that saw the same revision, one wins and one is told', async () => {
  const { customerId } = await post(shop.desk, '/intakes', intake('PG 4'));
  const both = await Promise.all(
    ['One', 'Two'].map((name) => patch(shop.desk, `/customers/${customerId}`, { name }, 1)),
  );
  expect(both.map((answer) => answer.statusCode).sort()).toEqual([200, 412]);
});

test('an Idempotency-Key makes one intake, however often and however fast it is sent', async () => {
  const headers = { 'idempotency-key': 'postgres-intake-1' };
  const send = () => shop.desk.ask('POST', '/intakes', { payload: intake('PG 5'), headers });
  const statuses = (await Promise.all(Array.from({ length: 5 }, send))).map((answer) => answer.statusCode);
  expect(statuses.every((status) => status === 201 || status === 409)).toBe(true);
  expect((await send()).statusCode).toBe(201);
  expect((await shop.desk.ask('GET', '/cars?q=pg5')).json().items).toHaveLength(1);
});

test('a whole intake is undone when its last part is refused', async () => {
  const before = await shop.desk.actor.db.customer.count();
  const refused = await shop.desk.ask('POST', '/intakes', {
    payload: { ...intake('PG 6'), wantedPresets: [{ name: 'Impossible', targetKpa: 2 }] },
  });
  expect(refused.statusCode).toBe(400);
  expect(await shop.desk.actor.db.customer.count()).toBe(before);
});

test('searching and paging find the same on PostgreSQL as on SQLite', async () => {
  for (const name of ['Søren Åkesson', 'Page C', 'Page A', 'Page B'])
    await post(shop.desk, '/customers', { name });
  const find = async (query: string) => (await shop.desk.ask('GET', `/customers?${query}`)).json();
  expect((await find('q=AKESSON')).items).toMatchObject([{ name: 'Søren Åkesson' }]);
  const first = await find('q=page&limit=2');
  const second = await find(`q=page&limit=2&cursor=${first.nextCursor}`);
  const names = [...first.items, ...second.items].map((item: { name: string }) => item.name);
  expect(names).toEqual(['Page A', 'Page B', 'Page C']);
  expect(second.nextCursor).toBeNull();
});

test('nothing of one workshop is found from another', async () => {
  const car = await carOnTest('PG 7');
  for (const path of [`/cars/${car.carId}`, `/visits/${car.visitId}`, `/presets/${car.presetId}`]) {
    expect((await shop.stranger.ask('GET', path)).statusCode).toBe(404);
  }
  expect((await shop.stranger.ask('GET', '/board')).json().cards).toEqual([]);
  const database = await openDatabase({ url });
  const theirs = scopeToWorkshop(database.client, shop.stranger.actor.workshopId);
  expect(await theirs.car.findMany()).toEqual([]);
  await database.close();
});

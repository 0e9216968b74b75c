import type { Board } from '@pullbook/contracts';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { openTestWorkshop, type TestWorkshop } from '../plumbing/test-workshop.js';
import { sealHolds } from '../sign-off/seal.js';
import { demoLogins, demoPassword } from './demo-people.js';
import { seedDemo } from './seed-demo.js';

let shop: TestWorkshop;
let workshopId: string;
beforeAll(async () => {
  shop = await openTestWorkshop({ mode: 'demo' });
  workshopId = await seedDemo({ database: shop.database, objects: shop.app.objects, now: shop.clock.now });
}, 300_000);
afterAll(() => shop.close());

const counts = async () => {
  const { client } = shop.database;
  const where = { workshopId };
  return {
    cars: await client.car.count({ where }),
    customers: await client.customer.count({ where }),
    visits: await client.visit.count({ where }),
    pulls: await client.pull.count({ where }),
    signOffs: await client.signOff.count({ where }),
    logs: await client.log.count({ where }),
    members: await client.member.count({ where }),
    events: await client.auditEvent.count({ where }),
  };
};

it('fills a yard with cars, past visits, signed-off ones and logs', async () => {
  const found = await counts();
  expect(found).toMatchObject({ cars: 9, customers: 9, members: 3, logs: 3 });
  expect(found.pulls).toBeGreaterThanOrEqual(200);
  expect(found.signOffs).toBeGreaterThanOrEqual(9);
});

it('has a car at every stage', async () => {
  const visits = await shop.database.client.visit.findMany({ where: { workshopId } });
  expect(new Set(visits.map(({ stage }) => stage))).toEqual(
    new Set(['booked', 'arrived', 'on-test', 'to-sign-off', 'ready', 'collected']),
  );
});

it('lets nothing lie in the future but what is booked', async () => {
  const now = shop.clock.now();
  const latest = await shop.database.client.auditEvent.findFirstOrThrow({
    where: { workshopId },
    orderBy: { at: 'desc' },
  });
  expect(latest.at.getTime()).toBeLessThanOrEqual(now.getTime());
});

it('adds nothing the second time', async () => {
  const before = await counts();
  const again = await seedDemo({ database: shop.database, objects: shop.app.objects, now: shop.clock.now });
  expect(again).toBe(workshopId);
  expect(await counts()).toEqual(before);
});

it.each(demoLogins)('lets $email sign in and read the board', async ({ email, role, name }) => {
  const signIn = await shop.app.inject({
    method: 'POST',
    url: '/api/v1/sign-in',
    payload: { email, password: demoPassword },
  });
  expect(signIn.json()).toMatchObject({ member: { role, name }, demo: true });
  const cookie = String(signIn.headers['set-cookie']).split(';')[0] ?? '';
  const board: Board = (await shop.app.inject({ url: '/api/v1/board', headers: { cookie } })).json();
  expect(board.cards.length).toBeGreaterThan(5);
});

it('has one preset told to stop, one that waits for its ceiling, and one proven but not signed', async () => {
  const { client } = shop.database;
  const owner = await client.member.findFirstOrThrow({ where: { workshopId, role: 'owner' } });
  const signIn = await shop.app.inject({
    method: 'POST',
    url: '/api/v1/sign-in',
    payload: { email: owner.email, password: demoPassword },
  });
  const headers = { cookie: String(signIn.headers['set-cookie']).split(';')[0] ?? '' };
  const ask = async (url: string) => (await shop.app.inject({ url: `/api/v1${url}`, headers })).json();
  const presetsOf = async (plate: string) => {
    const { id } = await client.car.findFirstOrThrow({ where: { workshopId, plate } });
    return (await ask(`/cars/${id}/presets`)).items;
  };
  const [, loose] = await presetsOf('PB 130');
  const session = await client.tuningSession.findFirstOrThrow({
    where: { workshopId, pulls: { some: { presetId: loose.id } } },
  });
  const next = await ask(`/tuning-sessions/${session.id}/next-pull?presetId=${loose.id}`);
  expect(next.advice).toMatchObject({ action: 'stop', duty: null });
  const [open] = await presetsOf('PB 145');
  expect(open).toMatchObject({ state: 'draft', ceilingKpa: null });
  expect(open.missing).toContain('no ceiling is agreed');
  const states = (await presetsOf('PB 122')).map(({ state }: { state: string }) => state);
  // The one that an earlier visit signed off may have come out with the very same duty again.
  expect(states[1]).toBe('proven');
  expect(['proven', 'signed-off']).toContain(states[0]);
});

it('seals that hold', async () => {
  const rows = await shop.database.client.signOff.findMany({ where: { workshopId } });
  expect(rows.filter((row) => !sealHolds(row))).toEqual([]);
});

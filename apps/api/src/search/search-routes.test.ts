import { noLimits, noMechanics } from '@pullbook/contracts';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { openTestWorkshop, type TestPerson, type TestWorkshop } from '../plumbing/test-workshop.js';

let shop: TestWorkshop;
beforeAll(async () => {
  shop = await openTestWorkshop();
  await takeIn(shop.desk, 'Nora Ålund', '0100 555 0191', 'QB 12-KL');
  await takeIn(shop.desk, 'Piet Morava', '0100 555 0192', 'XQB 12');
  await takeIn(shop.desk, 'Kaja Morava', '0100 555 0193', 'ZZ 900');
  await takeIn(shop.stranger, 'Nora Stranger', '0100 555 0194', 'QB 12-KL');
});
afterAll(() => shop.close());

async function takeIn(person: TestPerson, name: string, phone: string, plate: string): Promise<void> {
  const answer = await person.ask('POST', '/intakes', {
    payload: {
      customer: { name, phone },
      car: { plate, model: 'Coupe, 1.8 turbo', mechanics: noMechanics, limits: noLimits },
      visit: { stage: 'arrived' },
    },
  });
  expect(answer.statusCode).toBe(201);
}

const ask = async (q: string, person = shop.desk) =>
  (await person.ask('GET', '/search', { query: { q } })).json();
const plates = (rows: readonly { plate: string }[]) => rows.map((row) => row.plate);

test.each(['qb12kl', 'QB 12 KL', 'qb-12', 'b12k', '12-kl'])(
  'GET /search finds a plate typed as %s',
  async (q) => {
    const found = await ask(q);
    expect(plates(found.cars)[0]).toBe('QB 12-KL');
    expect(plates(found.visits)).toContain('QB 12-KL');
  },
);

test('GET /search puts plates that begin with the letters before those that have them inside', async () => {
  expect(plates((await ask('qb12')).cars)).toEqual(['QB 12-KL', 'XQB 12']);
});

test('GET /search finds customers, their cars and their visits by name, accents aside, and by telephone', async () => {
  const byName = await ask('alund');
  expect(byName.customers).toMatchObject([{ name: 'Nora Ålund', phone: '0100 555 0191' }]);
  expect(plates(byName.cars)).toEqual(['QB 12-KL']);
  expect(plates(byName.visits)).toEqual(['QB 12-KL']);
  expect((await ask('555 0193')).customers).toMatchObject([{ name: 'Kaja Morava' }]);
});

test('GET /search finds a visit by its number, with and without the noughts', async () => {
  for (const q of ['2', '0002', '#2'])
    expect((await ask(q)).visits[0]).toMatchObject({ number: 2, plate: 'XQB 12' });
});

test('GET /search shows visits in the house before those that have left', async () => {
  const { visits } = await ask('morava');
  expect(visits.map((one: { number: number }) => one.number)).toEqual([3, 2]);
  await shop.desk.actor.db.visit.updateMany({ where: { number: 3 }, data: { stage: 'collected' } });
  const after = (await ask('morava')).visits;
  expect(after.map((one: { number: number }) => one.number)).toEqual([2, 3]);
});

test('GET /search finds nothing of another workshop', async () => {
  expect((await ask('stranger')).customers).toEqual([]);
  expect((await ask('qb12', shop.stranger)).cars).toHaveLength(1);
  expect((await ask('alund', shop.stranger)).customers).toEqual([]);
});

test('GET /search answers marks without letters with nothing, and an empty question not at all', async () => {
  for (const q of ['--', '@@']) expect(await ask(q)).toEqual({ visits: [], cars: [], customers: [] });
  expect((await shop.desk.ask('GET', '/search', { query: { q: ' ' } })).statusCode).toBe(400);
  expect((await shop.app.inject({ url: '/api/v1/search?q=qb' })).statusCode).toBe(401);
});

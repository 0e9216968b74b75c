import { BoardQuery, noLimits, noMechanics } from '@pullbook/contracts';
import { scopeToWorkshop } from '@pullbook/database';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { openTestWorkshop, type TestWorkshop } from '../plumbing/test-workshop.js';
import {
  fillTestYard,
  parkTestCar,
  proveTestPreset,
  pullAt,
  type TestYard,
} from '../tuning-sessions/test-yard.js';
import { getBoard } from './get-board.js';

let shop: TestWorkshop;
beforeAll(async () => {
  shop = await openTestWorkshop();
});
afterAll(() => shop.close());

const board = async (query = '') => (await shop.desk.ask('GET', `/board${query}`)).json();
const cardOf = async (yard: Pick<TestYard, 'visitId'>) =>
  (await board()).cards.find((card: { visitId: string }) => card.visitId === yard.visitId);

test('GET /board tells of each car where it is, what holds it up, and draws its strips', async () => {
  const yard = await fillTestYard(shop);
  const first = await pullAt(shop.tuner, yard, 8);
  await shop.tuner.ask('POST', `/pulls/${first.id}/void`, { payload: { reason: 'wheel slipped' } });
  await pullAt(shop.tuner, yard, 8);
  const card = await cardOf(yard);
  const next = (
    await shop.tuner.ask('GET', `/tuning-sessions/${yard.sessionId}/next-pull?presetId=${yard.presetId}`)
  ).json().advice;
  expect(card).toMatchObject({
    stage: 'on-test',
    needsAttention: false,
    status: `next pull: ${next.duty} %`,
  });
  expect(card.presets).toEqual([
    {
      presetId: yard.presetId,
      state: 'on-test',
      name: 'Dry track',
      slot: 1,
      drift: null,
      strip: {
        baseKpa: 55,
        targetKpa: 140,
        toleranceKpa: 4,
        ceilingKpa: 155,
        pulls: [
          { number: 1, peakKpa: first.peakKpa, isVoid: true },
          { number: 2, peakKpa: first.peakKpa, isVoid: false },
        ],
        next: { lowKpa: next.prediction.lowKpa, highKpa: next.prediction.highKpa },
      },
    },
  ]);
});

test('GET /board says that a car without a described controller waits for one', async () => {
  const parked = await parkTestCar(shop.tuner, { hasController: false });
  expect(await cardOf(parked)).toMatchObject({ stage: 'arrived', status: 'controller not described yet' });
});

test('GET /board follows a preset until it is proven', async () => {
  const yard = await fillTestYard(shop);
  await proveTestPreset(shop.tuner, yard);
  expect(await cardOf(yard)).toMatchObject({ status: 'every preset is proven; to sign off next' });
});

test('GET /board asks the database the same number of questions for one car as for many', async () => {
  const asked: string[] = [];
  const noting = shop.database.client.$extends({
    query: { $allOperations: ({ operation, args, query }) => (asked.push(operation), query(args)) },
  }) as unknown as typeof shop.database.client;
  const actor = { ...shop.desk.actor, db: scopeToWorkshop(noting, shop.workshopId) };
  const countOf = async (): Promise<number> => {
    asked.length = 0;
    await getBoard(actor, BoardQuery.parse({}));
    return asked.length;
  };
  const few = await countOf();
  for (let car = 0; car < 12; car += 1) await parkTestCar(shop.tuner);
  expect(await countOf()).toBe(few);
  expect(few).toBeLessThan(15);
});

test('GET /board leaves collected cars out unless asked', async () => {
  const parked = await parkTestCar(shop.tuner);
  await shop.desk.actor.db.visit.update({ where: { id: parked.visitId }, data: { stage: 'collected' } });
  expect(await cardOf(parked)).toBeUndefined();
  const all = (await board('?collected=true')).cards;
  expect(all.filter((card: { stage: string }) => card.stage === 'collected')).toHaveLength(1);
});

test('GET /board delivers the soonest of each stage, counts them all, and delivers more when asked', async () => {
  const { db } = shop.desk.actor;
  await db.visit.updateMany({ data: { stage: 'collected' } });
  const due = ['2026-11-27', '2026-11-26', null, '2026-11-25'];
  for (const day of due) {
    const { visitId } = await parkTestCar(shop.tuner);
    const promisedAt = day === null ? null : new Date(`${day}T12:00:00Z`);
    await db.visit.update({ where: { id: visitId }, data: { promisedAt } });
  }
  const days = (answer: { cards: { promisedAt: string | null }[] }) =>
    answer.cards.map(({ promisedAt }) => promisedAt?.slice(0, 10) ?? null);
  const first = await board('?perStage=2');
  expect(days(first)).toEqual(['2026-11-25', '2026-11-26']);
  expect(first.counts).toMatchObject({ booked: 0, arrived: 4, collected: 0 });
  expect(days(await board('?perStage=4'))).toEqual(['2026-11-25', '2026-11-26', '2026-11-27', null]);
});

test('GET /board shows the cars of one tuner, and those with all words in plate, customer, bay or number', async () => {
  const { db } = shop.desk.actor;
  await db.visit.updateMany({ data: { stage: 'collected' } });
  // Test cars are parked past the counter of visits.
  await db.workshop.update({ where: { id: shop.workshopId }, data: { lastVisitNumber: 1000 } });
  const take = async (name: string, plate: string, visit: object) => {
    const car = { plate, model: 'Coupe', mechanics: noMechanics, limits: noLimits };
    const payload = { customer: { name }, car, visit: { stage: 'arrived', ...visit } };
    return (await shop.desk.ask('POST', '/intakes', { payload })).json().visitId as string;
  };
  await take('Nora Ålund', 'QB 12-KL', { bay: 'Cell 4', tunerId: shop.tuner.memberId });
  await take('Piet Morava', 'ZZ 900', { bay: null });
  const plates = async (query: string) =>
    (await board(query)).cards.map((card: { plate: string }) => card.plate);
  for (const q of ['qb12', 'alund', 'cell', 'cell kl']) expect(await plates(`?q=${q}`)).toEqual(['QB 12-KL']);
  expect(await plates('?q=nowhere')).toEqual([]);
  expect(await plates('?tuner=Tomas%20Tuner')).toEqual(['QB 12-KL']);
  expect(await plates('?tuner=Nobody')).toEqual([]);
  expect(await board('?tuner=Tomas%20Tuner')).toMatchObject({
    counts: { arrived: 1 },
    tuners: ['Tomas Tuner'],
  });
});

test('GET /board shows no car of another workshop', async () => {
  expect((await shop.stranger.ask('GET', '/board')).json()).toEqual({
    cards: [],
    counts: { booked: 0, arrived: 0, 'on-test': 0, 'to-sign-off': 0, ready: 0, collected: 0 },
    tuners: [],
    asOf: '2026-11-25T09:00:00.000Z',
  });
});

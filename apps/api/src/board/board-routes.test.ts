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
    await getBoard(actor, false);
    return asked.length;
  };
  const few = await countOf();
  for (let car = 0; car < 12; car += 1) await parkTestCar(shop.tuner);
  expect(await countOf()).toBe(few);
  expect(few).toBeLessThan(10);
});

test('GET /board leaves collected cars out unless asked', async () => {
  const parked = await parkTestCar(shop.tuner);
  await shop.desk.actor.db.visit.update({ where: { id: parked.visitId }, data: { stage: 'collected' } });
  expect(await cardOf(parked)).toBeUndefined();
  const all = (await board('?collected=true')).cards;
  expect(all.filter((card: { stage: string }) => card.stage === 'collected')).toHaveLength(1);
});

test('GET /board shows no car of another workshop', async () => {
  expect((await shop.stranger.ask('GET', '/board')).json()).toEqual({
    cards: [],
    asOf: '2026-11-25T09:00:00.000Z',
  });
});

import { afterAll, beforeAll, expect, test } from 'vitest';
import { forgetWhatRanOut } from './forget-what-ran-out.js';
import { openTestWorkshop, type TestWorkshop } from './test-workshop.js';

let shop: TestWorkshop;
beforeAll(async () => {
  shop = await openTestWorkshop();
});
afterAll(() => shop.close());

test('forgetWhatRanOut clears old replies and sign-ins, and nothing younger', async () => {
  const { client } = shop.database;
  const { db, memberId } = shop.desk.actor;
  const reply = (key: string, createdAt: string) =>
    db.keptReply.create({ data: { memberId, key, requestHash: '', createdAt: new Date(createdAt) } });
  await reply('old', '2026-09-01T00:00:00Z');
  await reply('young', '2026-11-01T00:00:00Z');
  await db.signIn.create({
    data: { memberId, secretHash: 'old', expiresAt: new Date('2026-11-24T00:00:00Z') },
  });
  const signIns = await client.signIn.count();
  await forgetWhatRanOut(client, shop.clock.now());
  expect((await client.keptReply.findMany()).map((row) => row.key)).toEqual(['young']);
  expect(await client.signIn.count()).toBe(signIns - 1);
});

import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { openTestWorkshop, type TestWorkshop } from '../plumbing/test-workshop.js';
import { fillTestYard, pullAt, type TestYard } from '../tuning-sessions/test-yard.js';

let shop: TestWorkshop;
let earlier: TestYard;
let present: TestYard;

beforeEach(async () => {
  shop = await openTestWorkshop();
  earlier = await fillTestYard(shop);
  present = await fillTestYard(shop);
  const { db } = shop.owner.actor;
  for (const { carId } of [earlier, present]) {
    const build = { buildCode: 'estate-2.0-a', controllerId: present.controllerId };
    await db.car.update({ where: { id: carId }, data: build });
  }
  for (const duty of [10, 20, 30, 40, 50]) await pullAt(shop.tuner, earlier, duty);
});
afterEach(() => shop.close());

const signOff = (yard: TestYard) =>
  shop.owner.actor.db.preset.update({ where: { id: yard.presetId }, data: { signedOffRevision: 1 } });

async function askNextPull() {
  const { sessionId, presetId } = present;
  const answer = await shop.tuner.ask('GET', `/tuning-sessions/${sessionId}/next-pull?presetId=${presetId}`);
  expect(answer.statusCode).toBe(200);
  const { basis, advice } = answer.json();
  const text: string = advice.reasons.map((reason: { text: string }) => reason.text).join(' ');
  return { earlierCars: basis.earlierCars, text, duty: advice.duty as number };
}

describe('GET /tuning-sessions/{id}/next-pull of a build that was tuned before', () => {
  it('leans on the signed-off preset of the earlier car, says so, and keeps the step limit', async () => {
    await signOff(earlier);
    const { earlierCars, text, duty } = await askNextPull();
    expect(earlierCars).toHaveLength(1);
    expect(earlierCars[0].pulls).toHaveLength(5);
    expect(text).toContain('Leans on 1 earlier car of this build');
    expect(duty).toBeLessThanOrEqual(10);
  });

  it('leaves out voided and unusable pulls', async () => {
    await signOff(earlier);
    const { db } = shop.owner.actor;
    await db.pull.updateMany({ where: { presetId: earlier.presetId, dutyPct: 10 }, data: { usable: false } });
    await db.pull.updateMany({
      where: { presetId: earlier.presetId, dutyPct: 20 },
      data: { voidedAt: new Date('2026-01-05T10:00:00Z') },
    });
    const { earlierCars } = await askNextPull();
    expect(earlierCars[0].pulls.map(({ duty }: { duty: number }) => duty)).toEqual([30, 40, 50]);
  });

  it('does not lean on a preset that was never signed off', async () => {
    const { earlierCars, text } = await askNextPull();
    expect(earlierCars).toBeUndefined();
    expect(text).not.toContain('earlier car');
  });

  it('does not lean on a car of another build, or with another controller', async () => {
    await signOff(earlier);
    const { db } = shop.owner.actor;
    await db.car.update({ where: { id: earlier.carId }, data: { buildCode: 'estate-2.0-b' } });
    expect((await askNextPull()).earlierCars).toBeUndefined();
    await db.car.update({
      where: { id: earlier.carId },
      data: { buildCode: 'estate-2.0-a', controllerId: earlier.controllerId },
    });
    expect((await askNextPull()).earlierCars).toBeUndefined();
  });

  it('does not lean on anything where the workshop switched it off', async () => {
    await signOff(earlier);
    const headers = { 'if-match': (await shop.owner.ask('GET', '/workshop')).headers['etag'] as string };
    const payload = { leansOnEarlierCars: false };
    const changed = await shop.owner.ask('PATCH', '/workshop', { payload, headers });
    expect(changed.json()).toMatchObject(payload);
    expect((await askNextPull()).earlierCars).toBeUndefined();
  });
});

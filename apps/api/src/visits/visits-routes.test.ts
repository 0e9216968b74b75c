import { noLimits } from '@pullbook/contracts';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { openTestWorkshop, type TestPerson, type TestWorkshop } from '../plumbing/test-workshop.js';

let shop: TestWorkshop;
beforeAll(async () => {
  shop = await openTestWorkshop();
});
afterAll(() => shop.close());

const intake = {
  customer: { name: 'Nora Novak', phone: '+44 20 7946 0123', email: 'nora@example.org' },
  car: { plate: 'AB 12-CD', model: 'Estate, 2.0 turbo', vin: '11111111111111111' },
  visit: { stage: 'arrived', wishes: 'more pull in third gear', promisedAt: '2026-11-26T17:00:00+01:00' },
  wantedPresets: [
    { name: 'Road', targetKpa: 120 },
    { name: 'Dry track', purpose: 'track days' },
  ],
};
const takeIn = (who: TestPerson, payload: object, headers: Record<string, string> = {}) =>
  who.ask('POST', '/intakes', { payload, headers });
const counts = async () => ({
  customers: await shop.desk.actor.db.customer.count(),
  cars: await shop.desk.actor.db.car.count(),
  visits: await shop.desk.actor.db.visit.count(),
  presets: await shop.desk.actor.db.preset.count(),
});
const get = async (path: string) => (await shop.desk.ask('GET', path)).json();
const withRevision = (revision: number) => ({ 'if-match': `"${revision}"` });
const newVisit = async (): Promise<{ id: string }> =>
  get(`/visits/${(await takeIn(shop.desk, { ...intake, wantedPresets: [] })).json().visitId}`);

test('POST /intakes takes in customer, car, visit and wanted presets from the desk', async () => {
  const answer = await takeIn(shop.desk, intake);
  expect(answer.statusCode).toBe(201);
  const { carId, customerId, visitId, presetIds } = answer.json();
  expect(await get(`/visits/${visitId}`)).toMatchObject({
    carId,
    customerId,
    plate: 'AB 12-CD',
    customerPhone: '+44 20 7946 0123',
    stage: 'arrived',
    stages: [{ stage: 'arrived', by: 'Dana Desk', enteredAt: '2026-11-25T09:00:00.000Z' }],
    promisedAt: '2026-11-26T16:00:00.000Z',
    number: 1,
  });
  const presets = (await get(`/cars/${carId}/presets`)).items;
  expect(presets.map((preset: { id: string }) => preset.id)).toEqual(presetIds);
  expect(presets).toMatchObject([
    { name: 'Road', slot: 1, targetKpa: 120, ceilingKpa: null, state: 'draft' },
    { name: 'Dry track', slot: 2, targetKpa: null },
  ]);
});

test('POST /intakes for a car on record adds presets in free slots only', async () => {
  const first = (await takeIn(shop.desk, intake)).json();
  const again = await takeIn(shop.desk, {
    ...intake,
    customer: { id: first.customerId },
    car: { id: first.carId },
    wantedPresets: [{ name: 'Wet track' }],
  });
  expect(again.statusCode).toBe(201);
  const presets = (await get(`/cars/${first.carId}/presets`)).items;
  expect(presets.map((preset: { slot: number; name: string }) => [preset.slot, preset.name])).toEqual([
    [1, 'Road'],
    [2, 'Dry track'],
    [3, 'Wet track'],
  ]);
});

test('POST /intakes leaves nothing behind when its last part is refused', async () => {
  const before = await counts();
  const refused = await takeIn(shop.desk, {
    ...intake,
    wantedPresets: [{ name: 'Fine' }, { name: 'Impossible', targetKpa: 2 }],
  });
  expect(refused.statusCode).toBe(400);
  const foreign = await takeIn(shop.desk, { ...intake, visit: { tunerId: shop.stranger.memberId } });
  expect(foreign.json()).toMatchObject({ status: 404, errors: [{ field: 'tunerId' }] });
  expect(await counts()).toEqual(before);
});

test('POST /intakes refuses a car of another customer, and fields that are not the desk’s', async () => {
  const { carId } = (await takeIn(shop.desk, intake)).json();
  const mixed = await takeIn(shop.desk, { ...intake, car: { id: carId } });
  expect(mixed.json()).toMatchObject({ status: 409, errors: [{ field: 'car.id' }] });
  const car = { ...intake.car, limits: { ...noLimits, engineKpa: 300 } };
  expect((await takeIn(shop.desk, { ...intake, car })).statusCode).toBe(403);
  expect((await takeIn(shop.tuner, { ...intake, car })).statusCode).toBe(201);
});

test.each([
  [{ ...intake, customer: { name: '' } }, 'customer.name', 'must not be empty'],
  [{ ...intake, car: { ...intake.car, plate: undefined } }, 'car.plate', 'is missing'],
  [
    { ...intake, wantedPresets: [{ name: 'A', targetKpa: 'much' }] },
    'wantedPresets.0.targetKpa',
    'must be a number',
  ],
  [
    { ...intake, visit: { bookedFor: 'tomorrow' } },
    'visit.bookedFor',
    'must be a date and time such as 2026-11-25T09:30:00+01:00',
  ],
])('POST /intakes names what is wrong (%#)', async (payload, field, message) => {
  expect((await takeIn(shop.desk, payload)).json()).toMatchObject({
    status: 400,
    errors: [{ field, message }],
  });
});

test('POST /intakes sent twice by a flaky network makes one visit', async () => {
  const before = await counts();
  const headers = { 'idempotency-key': 'desk-intake-0001' };
  const first = await takeIn(shop.desk, intake, headers);
  const second = await takeIn(shop.desk, intake, headers);
  expect(second.json()).toEqual(first.json());
  expect((await counts()).visits).toBe(before.visits + 1);
});

test('visits get running numbers, though many are booked at once', async () => {
  const { carId } = (await takeIn(shop.desk, intake)).json();
  const booked = await Promise.all(
    Array.from({ length: 8 }, () => shop.desk.ask('POST', '/visits', { payload: { carId } })),
  );
  const numbers = booked.map((answer) => answer.json().number).sort((a, b) => a - b);
  expect(numbers).toEqual(numbers.map((_, index) => numbers[0] + index));
});

test('GET /visits filters by stage, car and open ones, newest first', async () => {
  const { carId } = (await takeIn(shop.desk, intake)).json();
  await shop.desk.ask('POST', '/visits', { payload: { carId } });
  const found = async (query: string) =>
    (await get(`/visits?carId=${carId}&${query}`)).items.map((visit: { stage: string }) => visit.stage);
  expect(await found('')).toEqual(['booked', 'arrived']);
  expect(await found('stage=booked')).toEqual(['booked']);
  expect(await found('open=true')).toEqual(['booked', 'arrived']);
  expect(await found('open=false')).toEqual([]);
  expect(await get('/visits?stage=lost')).toMatchObject({
    status: 400,
    errors: [{ field: 'stage', message: expect.stringContaining('must be one of: booked, arrived') }],
  });
});

test('PATCH /visits/{id} assigns bay and tuner, and refuses an old revision or a desk as tuner', async () => {
  const { id } = await newVisit();
  const change = (payload: object, revision: number) =>
    shop.desk.ask('PATCH', `/visits/${id}`, { payload, headers: withRevision(revision) });
  const payload = { bay: 'Bay 2', tunerId: shop.tuner.memberId };
  expect((await change(payload, 1)).json()).toMatchObject({
    ...payload,
    tunerName: 'Tomas Tuner',
    revision: 2,
  });
  expect((await change({ bay: 'Bay 3' }, 1)).json()).toMatchObject({ status: 412 });
  expect((await change({ tunerId: shop.desk.memberId }, 2)).json()).toMatchObject({
    status: 404,
    errors: [{ field: 'tunerId' }],
  });
});

test('POST /visits/{id}/stage moves a visit on, keeps every stage on record, and says why it will not', async () => {
  const { id } = await newVisit();
  const move = (who: TestPerson, payload: object, revision: number) =>
    who.ask('POST', `/visits/${id}/stage`, { payload, headers: withRevision(revision) });
  expect((await move(shop.desk, { stage: 'on-test' }, 1)).json()).toMatchObject({ status: 403 });
  const moved = await move(shop.tuner, { stage: 'on-test', note: 'bay is free' }, 1);
  expect(moved.json()).toMatchObject({
    stage: 'on-test',
    revision: 2,
    stages: [{ stage: 'arrived' }, { stage: 'on-test', by: 'Tomas Tuner', note: 'bay is free' }],
  });
  expect((await move(shop.tuner, { stage: 'ready' }, 2)).json()).toMatchObject({
    status: 409,
    code: 'stage-not-reachable',
    detail: 'a visit that is on test goes to arrived or to sign off, not to ready',
  });
  expect((await move(shop.tuner, { stage: 'arrived' }, 1)).json()).toMatchObject({ status: 412 });
  const blind = await shop.tuner.ask('POST', `/visits/${id}/stage`, { payload: { stage: 'arrived' } });
  expect(blind.json()).toMatchObject({ status: 428 });
});

test('a collected visit is closed to changes', async () => {
  const { id } = await newVisit();
  await shop.desk.actor.db.visit.update({ where: { id }, data: { stage: 'collected' } });
  const payload = { wishes: 'too late' };
  const answer = await shop.desk.ask('PATCH', `/visits/${id}`, { payload, headers: withRevision(1) });
  expect(answer.json()).toMatchObject({ status: 409, code: 'visit-closed' });
});

test('visits of one workshop are not found from another', async () => {
  const { id } = await newVisit();
  const headers = withRevision(1);
  const answers = await Promise.all([
    shop.stranger.ask('GET', `/visits/${id}`),
    shop.stranger.ask('PATCH', `/visits/${id}`, { payload: { bay: 'theirs' }, headers }),
    shop.stranger.ask('POST', `/visits/${id}/stage`, { payload: { stage: 'booked' }, headers }),
  ]);
  expect(answers.map((answer) => answer.statusCode)).toEqual([404, 404, 404]);
  expect((await shop.stranger.ask('GET', '/visits')).json().items).toEqual([]);
  const lookalikes = await shop.stranger.ask('GET', '/lookalikes?plate=AB12CD');
  expect(lookalikes.json()).toEqual({ customers: [], cars: [] });
});

test('GET /lookalikes finds customers and cars that are on record, with the reason', async () => {
  const { customerId, carId } = (
    await takeIn(shop.desk, {
      ...intake,
      customer: { name: 'Ida Unique', phone: '0044 (0)20 555 98 76', email: 'ida@example.org' },
      car: { plate: 'LOOK 1', model: 'Coupé, 2.5 turbo', vin: '11111111111111112' },
    })
  ).json();
  const find = (query: Record<string, string>) => shop.desk.ask('GET', '/lookalikes', { query });
  expect((await find({ phone: '020 5559876' })).json().customers).toEqual([
    { id: customerId, name: 'Ida Unique', phone: '0044 (0)20 555 98 76', why: 'same telephone number' },
  ]);
  expect((await find({ email: 'IDA@example.org' })).json().customers[0].why).toBe('same mail address');
  expect((await find({ name: 'unique' })).json().customers[0].why).toBe('similar name');
  expect((await find({ name: 'ida UNIQUE' })).json().customers[0].why).toBe('same name');
  expect((await find({ plate: 'look-1' })).json().cars).toMatchObject([
    { id: carId, customerName: 'Ida Unique', why: 'same plate' },
  ]);
  expect((await find({ vin: '11111111111111112' })).json().cars[0].why).toBe('same VIN');
  expect((await find({})).json()).toEqual({ customers: [], cars: [] });
});

test('GET /records tells the history of one record to owner and tuner, newest first', async () => {
  const { id } = await newVisit();
  const payload = { stage: 'on-test' };
  await shop.tuner.ask('POST', `/visits/${id}/stage`, { payload, headers: withRevision(1) });
  const page = (await shop.owner.ask('GET', `/records?recordId=${id}`)).json();
  expect(page.items).toMatchObject([
    { action: 'visit-stage', by: 'Tomas Tuner' },
    { action: 'visit-created', by: 'Dana Desk' },
  ]);
  expect((await shop.desk.ask('GET', '/records')).statusCode).toBe(403);
  expect((await shop.stranger.ask('GET', `/records?recordId=${id}`)).json().items).toEqual([]);
});

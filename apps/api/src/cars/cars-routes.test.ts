import { noLimits, noMechanics } from '@pullbook/contracts';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { openTestWorkshop, type TestPerson, type TestWorkshop } from '../plumbing/test-workshop.js';

let shop: TestWorkshop;
let customerId: string;
let controllerId: string;
const controller = {
  name: 'Four slots, closed loop',
  presetSlots: 4,
  hasTimedOverride: true,
  loop: 'closed',
  dutyPct: { min: 0, max: 95, step: 0.5 },
  holdPct: { min: 0, max: 100, step: 5 },
  correction: null,
};
beforeAll(async () => {
  shop = await openTestWorkshop();
  customerId = (await shop.desk.ask('POST', '/customers', { payload: { name: 'Nora Novak' } })).json().id;
  controllerId = (await shop.tuner.ask('POST', '/controllers', { payload: controller })).json().id;
});
afterAll(() => shop.close());

const car = { plate: 'AB 12-cd', model: 'Estate, 2.0 turbo' };
const create = (who: TestPerson, more: object = {}) =>
  who.ask('POST', '/cars', { payload: { ...car, customerId, ...more } });
const change = (who: TestPerson, id: string, payload: object, revision = 1) =>
  who.ask('PATCH', `/cars/${id}`, { payload, headers: { 'if-match': `"${revision}"` } });

test('POST /cars takes a car in from the desk, with nothing known but its plate and model', async () => {
  const answer = await create(shop.desk);
  expect(answer.statusCode).toBe(201);
  expect(answer.json()).toMatchObject({
    ...car,
    customerName: 'Nora Novak',
    vinCheckDigit: 'none',
    controllerName: null,
    mechanics: noMechanics,
    limits: noLimits,
    revision: 1,
  });
});

test('POST /cars takes all that a tuner knows', async () => {
  const more = {
    vin: '11111111111111111',
    controllerId,
    buildCode: 'E-20T stage 1',
    limits: { ...noLimits, engineKpa: 170 },
    mechanics: { ...noMechanics, actuatorSpringKpa: 55, gearRatios: [3.5, 2, 1.4] },
  };
  const answer = await create(shop.tuner, more);
  expect(answer.json()).toMatchObject({ ...more, controllerName: controller.name, vinCheckDigit: 'agrees' });
});

test.each([
  [{ vin: 'IOQ' }, 'vin', 'a VIN has 17 letters and digits, without I, O and Q'],
  [{ limits: { ...noLimits, engineKpa: 'high' } }, 'limits.engineKpa', 'must be a number'],
  [{ mechanics: { ...noMechanics, gearRatios: [3.5, -1] } }, 'mechanics.gearRatios.1', 'must be above 0'],
  [{ modelYear: 1989.5 }, 'modelYear', 'must be a whole number'],
  [{ customerId: 'nobody' }, 'customerId', 'must be an id'],
])('POST /cars with %j says what is wrong', async (more, field, message) => {
  const answer = await create(shop.tuner, more);
  expect(answer.json()).toMatchObject({ status: 400, errors: [{ field, message }] });
});

test('POST /cars refuses customer and controller that are not this workshop’s', async () => {
  const theirs = (await shop.stranger.ask('POST', '/controllers', { payload: controller })).json().id;
  expect((await create(shop.tuner, { controllerId: theirs })).json()).toMatchObject({
    status: 404,
    errors: [{ field: 'controllerId' }],
  });
  const foreign = await shop.stranger.ask('POST', '/cars', { payload: { ...car, customerId } });
  expect(foreign.json()).toMatchObject({ status: 404, errors: [{ field: 'customerId' }] });
});

test('the desk changes whose a car is and how it is called, but nothing that tuning rests on', async () => {
  const { id } = (await create(shop.desk)).json();
  expect((await change(shop.desk, id, { plate: 'NEW 1', note: 'red key' })).statusCode).toBe(200);
  const limits = { ...noLimits, engineKpa: 300 };
  const refused = await change(shop.desk, id, { note: 'x', limits, controllerId }, 2);
  expect(refused.json()).toMatchObject({
    status: 403,
    errors: [{ field: 'controllerId' }, { field: 'limits' }],
  });
  expect((await create(shop.desk, { limits })).json()).toMatchObject({ status: 403 });
  const stored = (await shop.desk.ask('GET', `/cars/${id}`)).json();
  expect(stored).toMatchObject({ plate: 'NEW 1', note: 'red key', limits: noLimits, revision: 2 });
  expect((await change(shop.tuner, id, { limits, controllerId }, 2)).json()).toMatchObject({ limits });
});

test('PATCH /cars/{id} keeps what it does not name, and what was found before is found by the new plate', async () => {
  const { id } = (await create(shop.tuner, { vin: '11111111111111111' })).json();
  await change(shop.tuner, id, { plate: 'QQ-77 zz' });
  const find = async (q: string) =>
    (await shop.desk.ask('GET', '/cars', { query: { q } }))
      .json()
      .items.map((item: { id: string }) => item.id);
  expect(await find('qq77zz')).toEqual([id]);
  expect(await find('QQ 77')).toEqual([id]);
  expect(await find('qq77 novak')).toEqual([id]);
  expect(await find('qq77 somebody')).toEqual([]);
});

test('PATCH /cars/{id} refuses an old revision, and a missing one', async () => {
  const { id } = (await create(shop.desk)).json();
  await change(shop.desk, id, { note: 'first' });
  expect((await change(shop.desk, id, { note: 'late' })).json()).toMatchObject({ status: 412 });
  const blind = await shop.desk.ask('PATCH', `/cars/${id}`, { payload: { note: 'blind' } });
  expect(blind.json()).toMatchObject({ status: 428 });
});

test('cars and controllers of one workshop are not found from another', async () => {
  const { id } = (await create(shop.desk)).json();
  expect((await shop.stranger.ask('GET', `/cars/${id}`)).statusCode).toBe(404);
  expect((await change(shop.stranger, id, { note: 'taken' })).statusCode).toBe(404);
  expect((await shop.stranger.ask('GET', '/cars')).json().items).toEqual([]);
  expect((await shop.stranger.ask('GET', `/controllers/${controllerId}`)).statusCode).toBe(404);
});

test('GET /cars?customerId= lists one customer’s cars', async () => {
  const other = (await shop.desk.ask('POST', '/customers', { payload: { name: 'Other' } })).json().id;
  const { id } = (await create(shop.desk, { customerId: other })).json();
  const found = (await shop.desk.ask('GET', `/cars?customerId=${other}`)).json().items;
  expect(found.map((item: { id: string }) => item.id)).toEqual([id]);
});

test('controllers are described by tuners, read by all, and checked for sense', async () => {
  expect((await shop.desk.ask('POST', '/controllers', { payload: controller })).statusCode).toBe(403);
  const wrong = { ...controller, dutyPct: { min: 10, max: 5, step: 1 } };
  expect((await shop.tuner.ask('POST', '/controllers', { payload: wrong })).json()).toMatchObject({
    status: 400,
    errors: [{ field: 'dutyPct.max', message: 'must be above min' }],
  });
  const path = `/controllers/${controllerId}`;
  const headers = { 'if-match': '"1"' };
  const changed = await shop.tuner.ask('PATCH', path, { payload: { holdPct: null }, headers });
  expect(changed.json()).toMatchObject({ holdPct: null, presetSlots: 4, revision: 2 });
  expect((await shop.tuner.ask('PATCH', path, { payload: {}, headers })).statusCode).toBe(412);
  expect((await shop.desk.ask('GET', '/controllers')).json().items).toMatchObject([{ id: controllerId }]);
});

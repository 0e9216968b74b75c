import { noAirAndFuel, noLimits, noMechanics, type EngineSheet } from '@pullbook/contracts';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { openTestWorkshop, type TestPerson, type TestWorkshop } from '../plumbing/test-workshop.js';
import { testMap } from './test-map.js';

let shop: TestWorkshop;
let customerId: string;
beforeAll(async () => {
  shop = await openTestWorkshop();
  customerId = (await shop.desk.ask('POST', '/customers', { payload: { name: 'Nora Novak' } })).json().id;
});
afterAll(() => shop.close());

/** All that a tuner can know of an engine. */
const known = {
  volumetricEfficiencyPct: 95,
  compressorEfficiencyPct: 72,
  coolerEffectivenessPct: 70,
  filterLossKpa: 2,
  coolerLossKpa: 5,
  airFuelRatio: 12,
  fuelDensityKgPerL: 0.745,
  fuelGramsPerKwh: 310,
  injectorCount: 4,
  injectorFlowCm3PerMin: 550,
  injectorRatedKpa: 300,
  injectorDifferenceKpa: 300,
  highestInjectorDutyPct: 85,
  surgeMarginPct: 5,
  chokeMarginPct: 5,
  airC: 20,
  heightM: 0,
};
const mechanics = { ...noMechanics, displacementL: 2, revLimitRpm: 6500, airAndFuel: known };
const limits = { ...noLimits, overBoostCutKpa: 170, engineKpa: 180 };

async function park(more: object = {}): Promise<string> {
  const payload = { customerId, plate: 'EN 1', model: 'Saloon', limits, ...more };
  return (await shop.tuner.ask('POST', '/cars', { payload })).json().id;
}
const sheetOf = async (id: string): Promise<EngineSheet> =>
  (await shop.tuner.ask('GET', `/cars/${id}/engine`)).json();
const putMap = (who: TestPerson, id: string, payload: object = testMap, revision = 1) =>
  who.ask('PUT', `/cars/${id}/compressor-map`, { payload, headers: { 'if-match': `"${revision}"` } });

test('GET /cars/{id}/engine says what is missing of an engine that nobody described, and still builds the ceiling', async () => {
  const sheet = await sheetOf(await park());
  expect(sheet).toMatchObject({
    ceilingKpa: 165,
    binds: 'over-boost-cut',
    missing: ['displacement', 'rev limit'],
    points: [],
    map: null,
    pulls: [],
  });
  expect(sheet.limits.slice(0, 2)).toMatchObject([
    {
      cause: 'over-boost-cut',
      statedKpa: 170,
      marginKpa: 5,
      limitKpa: 165,
      headroomKpa: 0,
      state: 'binding',
    },
    { cause: 'engine', limitKpa: 180, headroomKpa: 15, state: 'counts' },
  ]);
  expect(sheet.limits.find(({ cause }) => cause === 'injectors')).toMatchObject({
    state: 'unknown',
    open: expect.arrayContaining(['number of injectors', 'displacement']),
  });
  expect(sheet.inputs.find(({ key }) => key === 'volumetricEfficiencyPct')).toMatchObject({
    value: 95,
    basis: 'assumed',
  });
});

test('GET /cars/{id}/engine lets injectors bind where all of it was entered, and only warns where it is assumed', async () => {
  const small = { ...known, injectorFlowCm3PerMin: 400 };
  const bound = await sheetOf(await park({ mechanics: { ...mechanics, airAndFuel: small } }));
  expect(bound.binds).toBe('injectors');
  expect(bound.points).toMatchObject([{ at: 'limit', boostKpa: bound.ceilingKpa }]);
  expect(bound.points[0]?.injectorDutyPct).toBeCloseTo(85, 0);
  const guessed = { ...small, volumetricEfficiencyPct: null };
  const warned = await sheetOf(await park({ mechanics: { ...mechanics, airAndFuel: guessed } }));
  expect(warned.binds).toBe('over-boost-cut');
  const row = warned.limits.find(({ cause }) => cause === 'injectors');
  expect(row).toMatchObject({ state: 'estimate', open: ['volumetric efficiency'] });
  expect(row?.headroomKpa).toBeLessThan(0);
});

test('GET /cars/{id}/engine reckons air, fuel and power at a preset’s target and ceiling', async () => {
  const id = await park({ mechanics });
  const goal = { name: 'Dry', slot: 1, targetKpa: 100, toleranceKpa: 4, ceilingKpa: 115 };
  await shop.tuner.ask('POST', `/cars/${id}/presets`, { payload: goal });
  const sheet = await sheetOf(id);
  expect(sheet.points.map(({ at, boostKpa }) => [at, boostKpa])).toEqual([
    ['target', 100],
    ['ceiling', 115],
    ['limit', sheet.ceilingKpa],
  ]);
  expect(sheet.presets).toMatchObject([{ name: 'Dry', headroomKpa: (sheet.ceilingKpa ?? 0) - 115 }]);
  const [target] = sheet.points;
  // By hand: ratio (101.325 + 100 + 5) / (101.325 - 2); outlet 293.15 · (1 + (ratio^0.2857 - 1) / 0.72); cooled by 70 %.
  expect(target?.pressureRatio).toBeCloseTo(2.0773, 3);
  expect(target?.outletC).toBeCloseTo(114.5, 0);
  expect(target?.chargeC).toBeCloseTo(48.4, 0);
  expect(target?.power.lowKw).toBeLessThan(target?.power.powerKw ?? 0);
  expect(target?.power.uncertaintyPct).toBeCloseTo(6, 6);
  expect(target?.place).toBeNull();
});

test('PUT /cars/{id}/compressor-map keeps a map, puts points on it, and DELETE takes it away again', async () => {
  const id = await park({ mechanics });
  const kept = await putMap(shop.tuner, id);
  expect(kept.statusCode).toBe(200);
  expect(kept.headers.etag).toBe('"2"');
  expect(kept.json()).toMatchObject({ carId: id, pointCount: 12, revision: 2, source: 'invented for tests' });
  expect((await shop.owner.ask('GET', `/cars/${id}/compressor-map`)).json()).toEqual(kept.json());
  const sheet = await sheetOf(id);
  expect(sheet.map?.lines).toHaveLength(4);
  expect(sheet.limits.find(({ cause }) => cause === 'compressor-map')?.state).not.toBe('unknown');
  expect(sheet.points[0]?.place).toMatchObject({ place: expect.any(String) });
  const headers = { 'if-match': '"2"' };
  expect((await shop.tuner.ask('DELETE', `/cars/${id}/compressor-map`, { headers })).statusCode).toBe(204);
  expect((await shop.tuner.ask('GET', `/cars/${id}/compressor-map`)).statusCode).toBe(404);
  const again = await shop.tuner.ask('DELETE', `/cars/${id}/compressor-map`, { headers });
  expect(again.statusCode).toBe(404);
  const events = await shop.tuner.actor.db.auditEvent.findMany({ where: { recordId: id } });
  expect(events.map(({ action }) => action)).toEqual(
    expect.arrayContaining(['compressor-map-set', 'compressor-map-removed']),
  );
});

test('PUT /cars/{id}/compressor-map names each row that it cannot read', async () => {
  const csv = 'speed,flow,pressure ratio\n60000,x,1.5\n60000,0.1,1.4\n60000,0.2,14';
  const answer = await putMap(shop.tuner, await park(), { ...testMap, csv });
  expect(answer.json()).toMatchObject({ status: 400, errors: [{ field: 'csv' }, { field: 'csv' }] });
  expect(answer.json().errors[0].message).toContain("row 2, column 'flow'");
  expect(answer.json().errors[1].message).toContain("row 4, column 'pressure ratio'");
});

test('PUT /cars/{id}/compressor-map refuses an old revision, a missing one, the desk and a stranger', async () => {
  const id = await park();
  expect((await putMap(shop.tuner, id, testMap, 3)).statusCode).toBe(412);
  const blind = await shop.tuner.ask('PUT', `/cars/${id}/compressor-map`, { payload: testMap });
  expect(blind.statusCode).toBe(428);
  expect((await putMap(shop.desk, id)).statusCode).toBe(403);
  expect((await putMap(shop.stranger, id)).statusCode).toBe(404);
});

test.each(['engine', 'compressor-map'])(
  'GET /cars/{id}/%s is no stranger’s and not the desk’s',
  async (path) => {
    const id = await park();
    await putMap(shop.tuner, id);
    expect((await shop.stranger.ask('GET', `/cars/${id}/${path}`)).statusCode).toBe(404);
    expect((await shop.desk.ask('GET', `/cars/${id}/${path}`)).statusCode).toBe(403);
  },
);

test('a ceiling is refused above over-boost cut less its margin, and above injectors that are known', async () => {
  const goal = { name: 'Dry', slot: 1, targetKpa: 100, toleranceKpa: 4 };
  const propose = async (id: string, ceilingKpa: number) =>
    shop.tuner.ask('POST', `/cars/${id}/presets`, { payload: { ...goal, ceilingKpa } });
  const plain = await park();
  expect((await propose(plain, 166)).json()).toMatchObject({
    code: 'ceiling-above-car-limit',
    errors: [{ message: expect.stringContaining('over-boost cut, 170 kPa less 5 kPa') }],
  });
  expect((await propose(plain, 165)).statusCode).toBe(201);
  const airAndFuel = { ...known, injectorFlowCm3PerMin: 400 };
  const small = await park({ mechanics: { ...mechanics, airAndFuel } });
  expect((await propose(small, 160)).json().errors[0].message).toContain("injectors' limit");
});

test('GET /cars/{id}/ceiling tells everybody of the workshop what binds, and no stranger', async () => {
  const airAndFuel = { ...known, injectorFlowCm3PerMin: 400 };
  const id = await park({ mechanics: { ...mechanics, airAndFuel } });
  const { ceilingKpa, binds, limits: rows } = await sheetOf(id);
  const answer = await shop.desk.ask('GET', `/cars/${id}/ceiling`);
  expect(answer.json()).toEqual({ carId: id, ceilingKpa, binds, limits: rows });
  expect(binds).toBe('injectors');
  expect((await shop.stranger.ask('GET', `/cars/${id}/ceiling`)).statusCode).toBe(404);
});

test('PATCH /cars/{id} with mechanics that say nothing of air and fuel leaves them as they are', async () => {
  const id = await park({ mechanics });
  const payload = { mechanics: { ...mechanics, displacementL: 2.2, airAndFuel: undefined } };
  const answer = await shop.tuner.ask('PATCH', `/cars/${id}`, { payload, headers: { 'if-match': '"1"' } });
  expect(answer.json().mechanics).toMatchObject({ displacementL: 2.2, airAndFuel: known });
  const emptied = await shop.tuner.ask('PATCH', `/cars/${id}`, {
    payload: { mechanics: { ...mechanics, airAndFuel: noAirAndFuel } },
    headers: { 'if-match': '"2"' },
  });
  expect(emptied.json().mechanics.airAndFuel).toEqual(noAirAndFuel);
});

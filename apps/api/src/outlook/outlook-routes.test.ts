import { signOffKeys, type OutlookCell, type PresetOutlook } from '@pullbook/contracts';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { openTestWorkshop, type TestWorkshop } from '../plumbing/test-workshop.js';
import {
  comeBack,
  fillTestYard,
  proveTestPreset,
  pullAt,
  storeDuty,
  testPeakKpa,
  type TestYard,
} from '../tuning-sessions/test-yard.js';

let shop: TestWorkshop;
let yard: TestYard;
beforeEach(async () => {
  shop = await openTestWorkshop();
  yard = await fillTestYard(shop);
});
afterEach(() => shop.close());

const nobody = '00000000-0000-7000-8000-000000000000';
const outlook = async (): Promise<PresetOutlook> =>
  (await shop.desk.ask('GET', `/presets/${yard.presetId}/outlook`)).json();
/** Pulls at a duty whose peaks lie so many per cent beside the car's. */
const pullOff = async (at: TestYard, dutyPct: number, offsPct: readonly number[], more: object = {}) => {
  for (const offPct of offsPct) {
    const peakKpa = Math.round(testPeakKpa(dutyPct) * (1 + offPct / 100) * 10) / 10;
    await pullAt(shop.tuner, at, dutyPct, { peakKpa, gear: 4, ...more });
  }
};
const sign = (visitId: string) =>
  shop.owner.ask('POST', `/visits/${visitId}/sign-off`, {
    payload: {
      items: signOffKeys.map((key) => ({ key, done: true })),
      presetIds: [yard.presetId],
      signedName: 'Olga Owner',
    },
  });
/** Finds a duty on the first visit, proves it with three more pulls and signs it off. */
const firstVisit = async (): Promise<number> => {
  const dutyPct = await proveTestPreset(shop.tuner, yard);
  await pullOff(yard, dutyPct, [0.2, -0.3, 0.1]);
  expect((await sign(yard.visitId)).statusCode).toBe(201);
  return dutyPct;
};

describe('GET /presets/{id}/outlook', () => {
  it('says what is missing before a duty is stored, and gives no forecast', async () => {
    await pullAt(shop.tuner, yard, 10);
    expect(await outlook()).toMatchObject({
      pulls: [],
      reference: null,
      drift: null,
      driftMissing: 'No duty is stored yet: drift is watched once there is one.',
      forecast: null,
      forecastMissing: 'No duty is stored yet: a forecast is for stored settings.',
    });
  });

  it('gives no forecast without a ceiling', async () => {
    const { carId } = yard;
    const payload = { name: 'Road', slot: 2, targetKpa: 120, dutyPct: 30 };
    const preset = (await shop.tuner.ask('POST', `/cars/${carId}/presets`, { payload })).json();
    const { forecast, forecastMissing } = (
      await shop.desk.ask('GET', `/presets/${preset.id}/outlook`)
    ).json();
    expect(forecast).toBeNull();
    expect(forecastMissing).toContain('Agree a ceiling first');
  });

  it('holds later pulls against those of the visit that was signed off, each told by its id', async () => {
    const dutyPct = await firstVisit();
    const back = await comeBack(shop.tuner, yard);
    await pullOff(back, dutyPct, [0.3, -0.2]);
    await pullAt(shop.tuner, back, dutyPct - 5);
    const { drift, pulls } = await outlook();
    expect(drift).toMatchObject({ alarm: null, baselineVisitId: yard.visitId, baselineSignedOff: true });
    const parts = pulls.map(({ part, visitId }) => [part, visitId]);
    expect(parts.filter(([part]) => part === 'since')).toEqual([
      ['since', back.visitId],
      ['since', back.visitId],
    ]);
    expect(parts.filter(([part]) => part === 'baseline').length).toBeGreaterThanOrEqual(3);
    expect(drift?.singles.map(({ pullId }) => pullId)).toEqual(
      pulls.filter(({ part }) => part === 'since').map(({ pullId }) => pullId),
    );
    expect(drift?.text).toContain('No drift since visit');
  });

  it('names the rule and the pull that fired, and rests the forecast on the newest visit alone', async () => {
    const dutyPct = await firstVisit();
    const back = await comeBack(shop.tuner, yard);
    await pullOff(back, dutyPct, [-12, -11.5]);
    const { drift, forecast, pulls } = await outlook();
    expect(drift?.alarm).toMatchObject({
      rule: 'shewhart-single-pull',
      visitId: back.visitId,
      pullNumber: 1,
      mayBeConditions: false,
    });
    expect(drift?.driftPct).toBeCloseTo(-11.7, 0);
    expect(drift?.text).toContain('% lower since visit');
    expect(forecast?.pullIds).toEqual(pulls.slice(-2).map(({ pullId }) => pullId));
    expect(forecast?.notes[0]).toContain('alone: while the drift alarm stands');
  });

  it('a voided pull no longer fires', async () => {
    const dutyPct = await firstVisit();
    const back = await comeBack(shop.tuner, yard);
    const jump = await pullAt(shop.tuner, back, dutyPct, { peakKpa: testPeakKpa(dutyPct) * 0.85 });
    expect((await outlook()).drift?.alarm?.pullId).toBe(jump.id);
    await shop.tuner.ask('POST', `/pulls/${jump.id}/void`, { payload: { reason: 'wheel slipped' } });
    expect((await outlook()).drift?.alarm).toBeNull();
  });

  it('starts anew with changed settings', async () => {
    const dutyPct = await firstVisit();
    const back = await comeBack(shop.tuner, yard);
    await pullOff(back, dutyPct, [-12, -11.5]);
    await storeDuty(shop.tuner, yard.presetId, dutyPct + 3);
    expect(await outlook()).toMatchObject({
      pulls: [],
      drift: null,
      driftMissing: 'No usable pull at the stored settings is on record.',
      forecastMissing: 'No usable pull at the stored settings is on record.',
    });
  });

  it('says what the weather may explain, and which conditions nobody wrote down', async () => {
    const air = { temperatureC: 24, pressureAbsKpa: 101 };
    const first = await comeBack(shop.tuner, yard, air);
    const dutyPct = await proveTestPreset(shop.tuner, first);
    await pullOff(first, dutyPct, [0.2, -0.3, 0.1]);
    expect((await sign(first.visitId)).statusCode).toBe(201);
    const back = await comeBack(shop.tuner, yard, { temperatureC: -16, pressureAbsKpa: 101 });
    await pullOff(back, dutyPct, [6.5, 6.8, 7, 6.6]);
    const { drift, reference, pulls } = await outlook();
    expect(reference).toMatchObject({ intakeC: 24, barometerAbsKpa: 101 });
    expect(pulls.at(-1)?.notCorrectedFor).toContain('intake');
    expect(drift?.alarm?.mayBeConditions).toBe(true);
    expect(drift?.possiblePct).toBeGreaterThan(3);
    expect(drift?.notes.join(' ')).toContain('40 K colder intake air');
    expect(drift?.notes.join(' ')).toContain('Not written down');
  });

  it('forecasts over gear, height and gradient, and says unknown where the pulls do not tell', async () => {
    await firstVisit();
    const { forecast } = await outlook();
    if (forecast === null) throw new Error('there is a ceiling, a duty and pulls: a forecast is due');
    expect(forecast.grids.map(({ by }) => by)).toEqual(['gear', 'height', 'gradient']);
    const [gears, heights] = forecast.grids;
    const middle = gears?.rows.find(({ intakeC }) => intakeC === 20)?.cells[2];
    expect(middle).toMatchObject({ status: 'known', unknown: [] });
    expect(middle?.probabilityOverCeiling).toBeLessThan(0.02);
    const pass = heights?.rows.find(({ intakeC }) => intakeC === 0)?.cells.at(-1);
    expect(pass).toMatchObject({ status: 'unknown', unknown: ['intake', 'barometer'] });
    const widthOf = (cell: OutlookCell | undefined): number => (cell ? cell.highKpa - cell.lowKpa : NaN);
    expect(widthOf(pass)).toBeGreaterThan(2 * widthOf(middle));
    expect(heights?.columns[2]?.barometerAbsKpa).toBeCloseTo(89.87, 1);
  });

  it('does not find the preset of another workshop, nor one that is not there', async () => {
    expect((await shop.stranger.ask('GET', `/presets/${yard.presetId}/outlook`)).statusCode).toBe(404);
    expect((await shop.tuner.ask('GET', `/presets/${nobody}/outlook`)).statusCode).toBe(404);
  });
});

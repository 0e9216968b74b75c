import {
  noLimits,
  noMechanics,
  readinessKeys,
  type AirOfDay,
  type Preset,
  type Pull,
  type PullNew,
} from '@pullbook/contracts';
import type { z } from 'zod';
import type { TestPerson, TestWorkshop } from '../plumbing/test-workshop.js';

/** A car in the yard with all that a pull needs. */
export interface TestYard {
  readonly controllerId: string;
  readonly carId: string;
  readonly visitId: string;
  readonly presetId: string;
  readonly sessionId: string;
}

/** Limits of the car of `fillTestYard`: its engine binds, at 170 kPa. */
export const testLimits = { ...noLimits, sensorFullScaleKpa: 200, engineKpa: 170 };

export const testPreset = {
  name: 'Dry track',
  purpose: 'track days on dry tyres',
  slot: 1,
  targetKpa: 140,
  toleranceKpa: 4,
  ceilingKpa: 155,
};

export const testSession = {
  placeKind: 'dyno-cell',
  place: 'Cell 1',
  driver: 'Dora Driver',
  passenger: 'Tomas Tuner',
};

/** A readiness check that passes on the car of `fillTestYard`. */
export const passingReadiness = {
  items: readinessKeys.map((key) => ({ key, ok: true })),
  overBoostCutKpa: 165,
  idleVacuumKpa: -64,
};

/** Peak that the car of `fillTestYard` makes at a duty, kPa gauge: flat at first, steep later, then flat again. */
export function testPeakKpa(dutyPct: number): number {
  return Math.round((55 + 110 / (1 + Math.exp(-(dutyPct - 45) / 9))) * 10) / 10;
}

let lastCar = 0;

/** A customer's car with a described controller, arrived for a visit; written straight into the book. */
export async function parkTestCar(
  { actor }: TestPerson,
  more: { hasController?: boolean } = {},
): Promise<Pick<TestYard, 'controllerId' | 'carId' | 'visitId'>> {
  const { db } = actor;
  lastCar += 1;
  const customer = await db.customer.create({ data: { name: `Customer ${lastCar}`, searchText: '' } });
  const controller = await db.controller.create({
    data: {
      name: 'Three slots',
      presetSlots: 3,
      hasTimedOverride: true,
      loop: 'open',
      dutyPct: { min: 0, max: 90, step: 1 },
      holdPct: { min: 0, max: 100, step: 5 },
    },
  });
  const car = await db.car.create({
    data: {
      customerId: customer.id,
      controllerId: more.hasController === false ? null : controller.id,
      plate: `TEST ${lastCar}`,
      plateKey: `TEST${lastCar}`,
      searchText: '',
      model: 'Estate, 2.0 turbo',
      mechanics: { ...noMechanics, actuatorSpringKpa: 55 },
      limits: testLimits,
    },
  });
  const visit = await db.visit.create({ data: { number: lastCar, carId: car.id, stage: 'arrived' } });
  return { controllerId: controller.id, carId: car.id, visitId: visit.id };
}

/** The same with a preset, a tuning session and a passed readiness check, through the API. */
export async function fillTestYard({ tuner }: Pick<TestWorkshop, 'tuner'>): Promise<TestYard> {
  const parked = await parkTestCar(tuner);
  const preset = await tuner.ask('POST', `/cars/${parked.carId}/presets`, { payload: testPreset });
  const session = await tuner.ask('POST', `/visits/${parked.visitId}/tuning-sessions`, {
    payload: testSession,
  });
  const yard = { ...parked, presetId: preset.json().id, sessionId: session.json().id };
  await tuner.ask('PUT', `/tuning-sessions/${yard.sessionId}/readiness-check`, {
    payload: passingReadiness,
    headers: { 'if-match': '"1"' },
  });
  return yard;
}

/** The same car on a further visit, with a tuning session and a passed readiness check. */
export async function comeBack(
  tuner: TestPerson,
  yard: TestYard,
  air: Partial<z.infer<typeof AirOfDay>> = {},
): Promise<TestYard> {
  const { db } = tuner.actor;
  lastCar += 1;
  const visit = await db.visit.create({ data: { number: lastCar, carId: yard.carId, stage: 'arrived' } });
  const known = { temperatureC: null, pressureAbsKpa: null, humidityPct: null, ...air };
  const session = await tuner.ask('POST', `/visits/${visit.id}/tuning-sessions`, {
    payload: { ...testSession, air: known },
  });
  const back = { ...yard, visitId: visit.id, sessionId: session.json().id };
  await tuner.ask('PUT', `/tuning-sessions/${back.sessionId}/readiness-check`, {
    payload: passingReadiness,
    headers: { 'if-match': '"1"' },
  });
  return back;
}

/** Records one pull at a duty with the peak that the car makes there. */
export async function pullAt(
  tuner: TestPerson,
  yard: TestYard,
  dutyPct: number,
  more: Partial<PullNew> = {},
): Promise<Pull> {
  const payload = { presetId: yard.presetId, dutyPct, peakKpa: testPeakKpa(dutyPct), ...more };
  const answer = await tuner.ask('POST', `/tuning-sessions/${yard.sessionId}/pulls`, { payload });
  if (answer.statusCode !== 201) throw new Error(`pull refused: ${answer.body}`);
  return answer.json();
}

/** Follows the advice until it accepts, stores the accepted duty, and gives it back. */
export async function proveTestPreset(tuner: TestPerson, yard: TestYard): Promise<number> {
  for (let pull = 0; pull < 30; pull += 1) {
    const next = await tuner.ask(
      'GET',
      `/tuning-sessions/${yard.sessionId}/next-pull?presetId=${yard.presetId}`,
    );
    const { advice } = next.json();
    if (advice.action === 'accept') {
      await storeDuty(tuner, yard.presetId, advice.duty);
      return advice.duty;
    }
    await pullAt(tuner, yard, advice.duty, { heatSoaked: pull > 3 });
  }
  throw new Error('the advice did not accept within 30 pulls');
}

/** Stores a duty in the preset, as a person does who accepted it. */
export async function storeDuty(tuner: TestPerson, presetId: string, dutyPct: number): Promise<void> {
  const preset: Preset = (await tuner.ask('GET', `/presets/${presetId}`)).json();
  const answer = await tuner.ask('PATCH', `/presets/${presetId}`, {
    payload: { dutyPct, reason: 'accepted by the advice' },
    headers: { 'if-match': `"${preset.revision}"` },
  });
  if (answer.statusCode !== 200) throw new Error(`duty not stored: ${answer.body}`);
}

import {
  readinessKeys,
  signOffKeys,
  TuningSessionNew,
  VisitNew,
  type SettingRange,
} from '@pullbook/contracts';
import { makeReportLink } from '../reports/make-report-link.js';
import { signVisit } from '../sign-off/sign-visit.js';
import { answerReadiness } from '../tuning-sessions/answer-readiness.js';
import { startSession } from '../tuning-sessions/start-session.js';
import { createVisit } from '../visits/create-visit.js';
import { moveVisit } from '../visits/move-visit.js';
import { getVisit } from '../visits/get-visit.js';
import { checkPreset } from './check-preset.js';
import { demoAir } from './demo-air.js';
import type { DemoClock } from './demo-clock.js';
import type { DemoPeople } from './demo-people.js';
import type { DemoResponse } from './demo-response.js';
import type { DemoVisit } from './demo-scene.js';
import { drivePreset } from './drive-preset.js';

/** A car of the scenario as it stands in the book. */
export interface DemoCar {
  readonly carId: string;
  readonly range: SettingRange;
  readonly response: DemoResponse;
  readonly overBoostCutKpa: number;
  readonly presets: readonly { readonly presetId: string; readonly targetKpa: number }[];
}

/** Who plays, on which clock, and what day it is. */
export interface DemoStage {
  readonly people: DemoPeople;
  readonly clock: DemoClock;
  readonly today: Date;
}

const DAY_MS = 24 * 3600 * 1000;
const HOUR_S = 3600;

/** Plays one visit as far as the scene goes, through the same services as real use. */
export async function playVisit(
  stage: DemoStage,
  car: DemoCar,
  visit: DemoVisit,
  index: number,
): Promise<void> {
  const visitId = await bookVisit(stage, car, visit);
  if (visit.until === 'booked') return;
  await moveOn(stage, visitId, 'arrived');
  if (visit.until === 'arrived') return;
  await pullAll(stage, car, { visit, visitId, index });
  if (visit.until === 'climbing' || visit.until === 'stopped') return;
  await moveOn(stage, visitId, 'to-sign-off');
  if (visit.until === 'proven') return;
  await signOff(stage, car, visit, visitId);
  if (visit.until === 'ready') return;
  stage.clock.pass(5 * HOUR_S);
  await moveOn(stage, visitId, 'collected');
}

/** Visits are booked five days before, those further ahead today. */
async function bookVisit(
  { people, clock, today }: DemoStage,
  car: DemoCar,
  visit: DemoVisit,
): Promise<string> {
  const day = visit.day === 0 ? today : morningOf(new Date(today.getTime() + visit.day * DAY_MS));
  clock.set(new Date(Math.min(day.getTime() - 5 * DAY_MS, today.getTime() - HOUR_S * 1000)));
  const promisedAt = new Date(day.getTime() + 8 * HOUR_S * 1000).toISOString();
  const { id } = await createVisit(
    people.desk,
    VisitNew.parse({
      carId: car.carId,
      wishes: visit.wishes,
      bay: visit.bay ?? null,
      tunerId: people.tuner.memberId,
      bookedFor: day.toISOString(),
      promisedAt,
    }),
  );
  if (visit.day <= 0) clock.set(day);
  return id;
}

/** The yard opens at eight. */
function morningOf(day: Date): Date {
  return new Date(Date.UTC(day.getUTCFullYear(), day.getUTCMonth(), day.getUTCDate(), 8));
}

async function moveOn(
  { people }: DemoStage,
  visitId: string,
  stage: 'arrived' | 'to-sign-off' | 'collected',
): Promise<void> {
  const actor = stage === 'to-sign-off' ? people.tuner : people.desk;
  const { revision } = await getVisit(actor.db, visitId);
  await moveVisit(actor, visitId, revision, { stage, note: '' });
}

interface Work {
  readonly visit: DemoVisit;
  readonly visitId: string;
  readonly index: number;
}

async function pullAll(stage: DemoStage, car: DemoCar, { visit, visitId, index }: Work): Promise<void> {
  const sessionId = await startReady(stage, car, visit, visitId);
  for (const place of visit.presets) {
    const preset = car.presets[place];
    if (preset === undefined) throw new Error(`the scene names a preset ${place} that the car does not have`);
    const drive = car.response.drive(index * 10 + place, visit.until === 'stopped' ? 3 : null);
    const plan = { ...preset, sessionId, range: car.range, drive, clock: stage.clock };
    if (visit.check !== undefined) {
      const airC = demoAir(visit.day).temperatureC;
      await checkPreset(stage.people.tuner, { ...plan, check: visit.check, airC });
      continue;
    }
    const isLast = place === visit.presets.at(-1);
    const pullCount = isLast ? pullCountOf(visit) : undefined;
    const isWary = visit.until === 'stopped';
    const accepted = await drivePreset(stage.people.tuner, { ...plan, isWary, pullCount });
    if (!accepted && pullCountOf(visit) === undefined) {
      throw new Error(`the advice accepted no duty in the visit "${visit.wishes}"`);
    }
  }
}

/** Pulls after which the scene ends; with a loose line the advice ends it before. */
function pullCountOf({ until, pullCount }: DemoVisit): number | undefined {
  return until === 'stopped' ? 12 : pullCount;
}

async function startReady(
  { people, clock }: DemoStage,
  car: DemoCar,
  visit: DemoVisit,
  visitId: string,
): Promise<string> {
  clock.pass(HOUR_S);
  const onCourse = visit.bay?.startsWith('Course') ?? false;
  const session = await startSession(
    people.tuner,
    visitId,
    TuningSessionNew.parse({
      placeKind: onCourse ? 'closed-course' : 'dyno-cell',
      place: visit.bay ?? 'Cell 1',
      driver: 'Rolf Aldous',
      passenger: people.tuner.name,
      fuel: 'RON 98',
      air: demoAir(visit.day),
    }),
  );
  clock.pass(600);
  await answerReadiness(people.tuner, session.id, session.revision, {
    items: readinessKeys.map((key) => ({ key, ok: true, note: '' })),
    overBoostCutKpa: car.overBoostCutKpa,
    idleVacuumKpa: -65,
  });
  return session.id;
}

async function signOff(
  { people, clock }: DemoStage,
  car: DemoCar,
  visit: DemoVisit,
  visitId: string,
): Promise<void> {
  clock.pass(HOUR_S);
  await signVisit(people.owner, visitId, {
    items: signOffKeys.map((key) => ({ key, done: true, note: '' })),
    presetIds: visit.presets.flatMap((place) => car.presets[place]?.presetId ?? []),
    signedName: people.owner.name,
  });
  await makeReportLink(people.desk, visitId);
}

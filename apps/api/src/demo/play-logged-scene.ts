import {
  CarNew,
  CustomerNew,
  LogConfirm,
  noLimits,
  noMechanics,
  PresetNew,
  readinessKeys,
  TuningSessionNew,
  VisitNew,
} from '@pullbook/contracts';
import {
  channelsOfStyle,
  compressorMapCsv,
  drawCar,
  drawLogger,
  LOG_STYLES,
  PULL_DEFAULTS,
  recordLog as recordDrive,
  runPull,
  seededRandom,
  type PhysicalCar,
} from '@pullbook/practice-car';
import { createCar } from '../cars/create-car.js';
import { createCustomer } from '../customers/create-customer.js';
import { confirmPulls } from '../logs/confirm-pulls.js';
import { recordLog } from '../logs/record-log.js';
import type { ObjectStore } from '../plumbing/object-store.js';
import { createPreset } from '../presets/create-preset.js';
import { answerReadiness } from '../tuning-sessions/answer-readiness.js';
import { startSession } from '../tuning-sessions/start-session.js';
import { createVisit } from '../visits/create-visit.js';
import { setCompressorMap } from '../engine/set-compressor-map.js';
import { demoEngines } from './demo-engines.js';
import type { DemoStage } from './play-visit.js';

const PLATE = 'PB 188';
const SEED = 7;
/** Duties of the logged pulls, one file each. */
const DUTIES_PCT = [10, 20, 30];
const RATE_HZ = 50;

/**
 * A car that is set up by log files: a simulated drive for each duty, written as a customer's logger would write it,
 * dropped in and confirmed.
 */
export async function playLoggedScene(
  stage: DemoStage,
  objects: ObjectStore,
  controllerId: string,
): Promise<void> {
  const { people, clock, today } = stage;
  if ((await people.owner.db.car.findFirst({ where: { plate: PLATE } })) !== null) return;
  clock.set(today);
  const car = drawCar(seededRandom(SEED));
  const { presetId, sessionId } = await arrive(stage, car, controllerId);
  for (const [index, dutyPct] of DUTIES_PCT.entries()) {
    clock.pass(600);
    const text = driveText(car, dutyPct, index);
    const pieces = (async function* (): AsyncGenerator<Uint8Array> {
      yield Buffer.from(text, 'utf8');
    })();
    const file = { fileName: `drive-${index + 1}.csv`, pieces };
    const { log } = await recordLog(people.tuner, objects, sessionId, file);
    const found = log.analysis.pulls.findIndex((pull) => pull.usable && pull.peakKpa !== null);
    if (found < 0) continue;
    await confirmPulls(people.tuner, log.id, LogConfirm.parse({ presetId, dutyPct, indexes: [found] }));
  }
}

/** One pull as a file: channels and spelling of the first of the practice loggers. */
function driveText(car: PhysicalCar, dutyPct: number, index: number): string {
  const random = seededRandom(SEED * 100 + index);
  const [style] = LOG_STYLES;
  if (style === undefined) throw new Error('practice-car has no way to write a log');
  const logger = drawLogger(RATE_HZ, channelsOfStyle(style), random);
  return recordDrive(car, [{ ...PULL_DEFAULTS, dutyPct }], { logger, style, idleS: 2 }, random).csv;
}

async function arrive(
  { people, clock }: DemoStage,
  physical: PhysicalCar,
  controllerId: string,
): Promise<{ presetId: string; sessionId: string }> {
  // Above what the last logged pull makes, so that there is still something to do.
  const targetKpa = Math.round(runPull(physical, { dutyPct: Math.max(...DUTIES_PCT) }).peakKpa * 1.12);
  const customer = await createCustomer(
    people.desk,
    CustomerNew.parse({ name: 'Hanne Dray', phone: '0555 0109', email: 'hanne@customer.example' }),
  );
  const car = await createCar(people.tuner, carOf(customer.id, controllerId, targetKpa));
  await setCompressorMap(people.tuner, car.id, car.revision, {
    csv: compressorMapCsv(physical),
    flowUnit: 'kgPerS',
    reference: 'gas-stand',
    source: 'the simulated compressor of this practice car',
  });
  const preset = await createPreset(
    people.tuner,
    car.id,
    PresetNew.parse({
      name: 'Stage',
      purpose: 'gravel stages, best pump fuel',
      slot: 1,
      targetKpa,
      toleranceKpa: Math.max(3, Math.round(targetKpa * 0.03)),
      ceilingKpa: Math.round(targetKpa * 1.1),
    }),
  );
  const visit = await createVisit(
    people.desk,
    VisitNew.parse({
      carId: car.id,
      stage: 'arrived',
      wishes: 'Set up for gravel, logs of every pull please',
      bay: 'Course A',
      tunerId: people.tuner.memberId,
      promisedAt: new Date(clock.now().getTime() + 30 * 3600 * 1000).toISOString(),
    }),
  );
  return { presetId: preset.id, sessionId: await startReady(people.tuner, visit.id, targetKpa) };
}

function carOf(customerId: string, controllerId: string, targetKpa: number): CarNew {
  return CarNew.parse({
    customerId,
    plate: PLATE,
    model: 'Hatchback, 1.8 turbo',
    modelYear: 2006,
    buildCode: 'hatch-1.8-gravel',
    controllerId,
    mechanics: { ...noMechanics, ...demoEngines.measured, fuel: 'petrol' },
    limits: { ...noLimits, engineKpa: Math.round(targetKpa * 1.25), sensorFullScaleKpa: 260 },
  });
}

async function startReady(
  tuner: DemoStage['people']['tuner'],
  visitId: string,
  targetKpa: number,
): Promise<string> {
  const session = await startSession(
    tuner,
    visitId,
    TuningSessionNew.parse({
      placeKind: 'closed-course',
      place: 'Course A',
      driver: 'Rolf Aldous',
      passenger: tuner.name,
      fuel: 'RON 98',
    }),
  );
  await answerReadiness(tuner, session.id, session.revision, {
    items: readinessKeys.map((key) => ({ key, ok: true, note: '' })),
    overBoostCutKpa: Math.round(targetKpa * 1.16),
    idleVacuumKpa: -66,
  });
  return session.id;
}

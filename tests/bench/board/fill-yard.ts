import { noLimits, noMechanics, readinessKeys } from '@pullbook/contracts';
import { openDatabase, scopeToWorkshop, type WorkshopDatabase } from '@pullbook/database';
import { seededRandom } from '@pullbook/practice-car';
import { randomUUID } from 'node:crypto';
import path from 'node:path';

const stages = ['booked', 'arrived', 'on-test', 'to-sign-off', 'ready'] as const;
const tuners = ['Jonas Fenwick', 'Marta Vell'] as const;
const models = ['Estate, 2.0 turbo', 'Coupe, 1.8 turbo', 'Van, 2.2 turbo', 'Hatchback, 1.6 turbo'] as const;
const sixMinutesMs = 360_000;
/** SQLite takes so many values in one statement with room to spare. */
const lot = 400;

interface YardCar {
  readonly index: number;
  readonly carId: string;
  readonly visitId: string;
  readonly stage: (typeof stages)[number];
  readonly presetIds: readonly string[];
  readonly sessionId: string;
  readonly middleDuty: number;
  readonly riseKpa: number;
}

/**
 * Fills the demo workshop's book with this many invented visits, none of them collected, a fifth at each stage, each of
 * a car with two presets; those beyond 'arrived' have been pulled seven times. Straight into the file: the services
 * would take an hour over it.
 */
export async function fillYard(dataDir: string, visitCount: number): Promise<void> {
  const database = await openDatabase({ url: `file:${path.join(dataDir, 'pullbook.db')}` });
  try {
    const workshop = await database.client.workshop.findFirstOrThrow({ where: { isDemo: true } });
    const db = scopeToWorkshop(database.client, workshop.id);
    const random = seededRandom(20_261_125);
    const controller = await db.controller.findFirstOrThrow({ where: { loop: 'open' } });
    const people = await db.member.findMany({ where: { active: true }, select: { id: true } });
    const cars = Array.from({ length: visitCount }, (_, index) => drawCar(index, random));
    const first = workshop.lastVisitNumber + 1;
    for (let from = 0; from < cars.length; from += lot) {
      await writeCars(db, cars.slice(from, from + lot), { controllerId: controller.id, first, people });
    }
    await database.client.workshop.update({
      where: { id: workshop.id },
      data: { lastVisitNumber: first + visitCount },
    });
  } finally {
    await database.close();
  }
}

function drawCar(index: number, random: () => number): YardCar {
  return {
    index,
    carId: randomUUID(),
    visitId: randomUUID(),
    stage: stages[index % stages.length] ?? 'booked',
    presetIds: [randomUUID(), randomUUID()],
    sessionId: randomUUID(),
    middleDuty: 38 + 14 * random(),
    riseKpa: 80 + 40 * random(),
  };
}

interface YardParts {
  readonly controllerId: string;
  readonly first: number;
  readonly people: readonly { readonly id: string }[];
}

async function writeCars(db: WorkshopDatabase, cars: readonly YardCar[], parts: YardParts): Promise<void> {
  await db.customer.createMany({
    data: cars.map(({ carId, index }) => ({
      id: customerOf(carId),
      name: `Bench customer ${index}`,
      searchText: `benchcustomer${index}`,
    })),
  });
  await db.car.createMany({ data: cars.map((car) => carRow(car, parts)) });
  await db.visit.createMany({ data: cars.map((car) => visitRow(car, parts)) });
  await db.preset.createMany({ data: cars.flatMap(presetRows) });
  await db.presetRevision.createMany({ data: cars.flatMap(revisionRows) });
  const driven = cars.filter(({ stage }) => stage !== 'booked' && stage !== 'arrived');
  await db.tuningSession.createMany({ data: driven.map(sessionRow) });
  for (let pullNumber = 1; pullNumber <= 7; pullNumber += 1) {
    await db.pull.createMany({ data: driven.flatMap((car) => pullRows(car, pullNumber)) });
  }
}

/** The customer of a car, told by its id turned round. */
const customerOf = (carId: string): string =>
  `${carId.slice(0, 24)}${[...carId.slice(24)].reverse().join('')}`;

const targetKpa = ({ riseKpa }: YardCar): number => Math.round(55 + 0.6 * riseKpa);

function carRow({ carId, index }: YardCar, { controllerId }: YardParts) {
  const plate = `YD ${String(index).padStart(4, '0')}`;
  const model = models[index % models.length] ?? models[0];
  return {
    ...{ id: carId, customerId: customerOf(carId), controllerId, plate, model },
    plateKey: plate.replace(' ', ''),
    searchText: `${plate.replace(' ', '').toLowerCase()} ${model.toLowerCase().replaceAll(/[^a-z0-9]/g, '')}`,
    mechanics: { ...noMechanics, actuatorSpringKpa: 55 },
    limits: { ...noLimits },
  };
}

function visitRow({ visitId, carId, index, stage }: YardCar, { first, people }: YardParts) {
  const at = new Date(Date.now() + (index - 200) * sixMinutesMs);
  return {
    ...{ id: visitId, carId, stage, number: first + index },
    bay: `Cell ${index % 9}`,
    tunerId: people[index % people.length]?.id ?? null,
    bookedFor: stage === 'booked' ? at : null,
    promisedAt: stage === 'booked' ? null : at,
  };
}

const presetRows = ({ presetIds, carId }: YardCar) =>
  presetIds.map((id, slot) => ({ id, carId, slot: slot + 1 }));

const revisionRows = (car: YardCar) =>
  car.presetIds.map((presetId, slot) => ({
    ...{ presetId, revision: 1, slot: slot + 1, purpose: 'bench', kind: 'standing', toleranceKpa: 4 },
    name: slot === 0 ? 'Everyday' : 'Dry track',
    targetKpa: targetKpa(car) + 4 * slot,
    ceilingKpa: targetKpa(car) + 4 * slot + 12,
    dutyPct: car.stage === 'on-test' ? null : 48,
    madeBy: tuners[0],
  }));

const sessionRow = ({ sessionId, visitId }: YardCar) => ({
  ...{ id: sessionId, visitId, number: 1, placeKind: 'dyno-cell', place: 'Cell 1' },
  ...{ driver: 'Rolf Aldous', passenger: tuners[0], air: {}, readinessPassed: true },
  readiness: {
    items: readinessKeys.map((key) => ({ key, ok: true })),
    overBoostCutKpa: 190,
    idleVacuumKpa: -64,
  },
});

function pullRows(car: YardCar, number: number) {
  const dutyPct = Math.min(6 + 7 * number, 48);
  return car.presetIds.map((presetId) => ({
    ...{ visitId: car.visitId, tuningSessionId: car.sessionId, presetId, presetRevision: 1, number, dutyPct },
    peakKpa: Math.round(550 + (10 * car.riseKpa) / (1 + Math.exp(-(dutyPct - car.middleDuty) / 9))) / 10,
    ...{ source: 'typed', reasons: [], warnings: [], recordedBy: tuners[0] },
    heatSoaked: number === 7,
  }));
}

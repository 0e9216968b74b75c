import type { PaperHeader } from '@pullbook/contracts';
import type { OpenDatabase } from '@pullbook/database';
import { createController } from '../controllers/create-controller.js';
import type { Actor } from '../plumbing/actor.js';
import type { ObjectStore } from '../plumbing/object-store.js';
import { demoClock } from './demo-clock.js';
import { demoControllers, type DemoControllerKey } from './demo-controllers.js';
import { demoPeople } from './demo-people.js';
import { demoScenes } from './demo-scenes.js';
import { parkCar } from './park-car.js';
import { playLoggedScene } from './play-logged-scene.js';
import { playVisit, type DemoStage } from './play-visit.js';

/** What the demo workshop is put into. */
export interface DemoOptions {
  readonly database: OpenDatabase;
  readonly objects: ObjectStore;
  readonly now?: () => Date;
}

/**
 * Fills the book with an invented workshop: people, cars at every stage, visits of the past year. All of it goes through
 * the same services as real use, on a clock of its own. A car that is there already is left as it is, so a second run
 * adds nothing.
 *
 * @returns the workshop's id
 */
export async function seedDemo({ database, objects, now = () => new Date() }: DemoOptions): Promise<string> {
  const today = beginningOfDay(now());
  const clock = demoClock(new Date(today.getTime() - 500 * 24 * 3600 * 1000));
  const workshopId = await demoWorkshop(database, clock.now());
  const stage: DemoStage = { people: await demoPeople(database, workshopId, clock.now), clock, today };
  const controllers = await describeControllers(stage.people.owner);
  for (const scene of demoScenes) {
    if (await isParked(stage.people.owner, scene.plate)) continue;
    const car = await parkCar(stage.people, scene, controllers[scene.controller]);
    for (const [index, visit] of scene.visits.entries()) await playVisit(stage, car, visit, index);
  }
  await playLoggedScene(stage, objects, controllers.threeSlots);
  return workshopId;
}

/** The working day began five hours ago, so that what happens today lies behind whoever looks. */
function beginningOfDay(now: Date): Date {
  return new Date(now.getTime() - 5 * 3600 * 1000);
}

/** An invented address; its domain is reserved for examples (RFC 2606). */
const demoPaperHeader: PaperHeader = {
  addressLines: ['Kiln Lane 14', '0042 Harrowmere'],
  phone: '+00 555 0100',
  online: 'desk@pullbook.example',
  registration: 'Trade register 000417 · tax number 00/123/4567',
  foot: 'Full boost on closed courses only. Ask us before you change anything.',
  paper: 'a4',
  timeZone: '',
};

async function demoWorkshop({ client }: OpenDatabase, createdAt: Date): Promise<string> {
  const known = await client.workshop.findFirst({ where: { isDemo: true } });
  if (known !== null) return known.id;
  const data = { name: 'Practice workshop', isDemo: true, createdAt, paperHeader: demoPaperHeader };
  return (await client.workshop.create({ data })).id;
}

async function describeControllers(owner: Actor): Promise<Record<DemoControllerKey, string>> {
  const ids: Partial<Record<DemoControllerKey, string>> = {};
  for (const key of Object.keys(demoControllers) as DemoControllerKey[]) {
    const kind = demoControllers[key];
    const known = await owner.db.controller.findFirst({ where: { name: kind.name } });
    ids[key] = (known ?? (await createController(owner, kind))).id;
  }
  return ids as Record<DemoControllerKey, string>;
}

/** Whether a car of the scenario is in the book already. */
async function isParked({ db }: Actor, plate: string): Promise<boolean> {
  return (await db.car.findFirst({ where: { plate } })) !== null;
}

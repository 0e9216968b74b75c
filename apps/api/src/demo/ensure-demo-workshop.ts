import { scopeToWorkshop, type OpenDatabase } from '@pullbook/database';
import type { ObjectStore } from '../plumbing/object-store.js';
import { demoPeople } from './demo-people.js';
import { seedDemo } from './seed-demo.js';

/** The mark in the records that the demo workshop has been filled to its end. */
const filled = 'demo-filled';

interface DemoNeeds {
  readonly database: OpenDatabase;
  readonly objects: ObjectStore;
  /** Whether cars and pulls are wanted too, or the practice accounts alone. */
  readonly isFull: boolean;
}

/**
 * Sees to it that the demo workshop and its practice accounts are there. It is filled once; what people then make of
 * it stays theirs. A filling that was cut off is taken up again.
 */
export async function ensureDemoWorkshop({ database, objects, isFull }: DemoNeeds): Promise<void> {
  const { client } = database;
  const known = await client.workshop.findFirst({ where: { isDemo: true } });
  if (
    known &&
    (!isFull || (await client.auditEvent.findFirst({ where: { workshopId: known.id, action: filled } })))
  ) {
    return;
  }
  if (isFull) {
    await markFilled(database, await seedDemo({ database, objects }));
    return;
  }
  const { id } = await client.workshop.create({ data: { name: 'Practice workshop', isDemo: true } });
  await demoPeople(database, id, () => new Date());
}

async function markFilled({ client }: OpenDatabase, workshopId: string): Promise<void> {
  const summary = 'filled the demo workshop';
  const data = {
    action: filled,
    noun: 'workshop',
    recordId: workshopId,
    summary,
    detail: {},
    by: 'Pullbook',
  };
  await scopeToWorkshop(client, workshopId).auditEvent.create({ data });
}

import type { LogOptions } from '@pullbook/tuning-math';
import type { Actor } from '../plumbing/actor.js';
import type { SessionRecord } from '../tuning-sessions/load-session.js';
import { logOptionsOfCar } from './log-options-of-car.js';

/** What the book knows of the car and the air of a tuning session. */
export async function readOptions(
  { db }: Pick<Actor, 'db'>,
  { visit, air }: SessionRecord,
): Promise<LogOptions> {
  return logOptionsOfCar(await db.car.findUniqueOrThrow({ where: { id: visit.carId } }), air);
}

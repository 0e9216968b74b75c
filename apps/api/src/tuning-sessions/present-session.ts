import { AirOfDay, PlaceKind, type TuningSession } from '@pullbook/contracts';
import type { SessionRecord } from './load-session.js';

/** A tuning session as the API tells it. */
export function presentSession(record: SessionRecord): TuningSession {
  return {
    id: record.id,
    visitId: record.visit.id,
    number: record.number,
    placeKind: PlaceKind.parse(record.placeKind),
    place: record.place,
    driver: record.driver,
    passenger: record.passenger,
    fuel: record.fuel,
    air: AirOfDay.parse(record.air),
    readiness: record.readiness,
    startedAt: record.startedAt.toISOString(),
    revision: record.revision,
  };
}

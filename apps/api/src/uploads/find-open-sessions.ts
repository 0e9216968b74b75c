import { closedStages, type OpenSession } from '@pullbook/contracts';
import type { WorkshopTransaction } from '@pullbook/database';

/** Tuning sessions of all visits that still take logs, the latest first. */
export async function findOpenSessions(db: WorkshopTransaction): Promise<OpenSession[]> {
  const rows = await db.tuningSession.findMany({
    where: { visit: { stage: { notIn: [...closedStages] }, signOff: null } },
    orderBy: [{ startedAt: 'desc' }, { id: 'desc' }],
    select: {
      id: true,
      number: true,
      place: true,
      startedAt: true,
      visit: {
        select: { id: true, number: true, carId: true, car: { select: { plate: true, model: true } } },
      },
    },
  });
  return rows.map(({ id, number, place, startedAt, visit }) => ({
    tuningSessionId: id,
    number,
    place,
    startedAt: startedAt.toISOString(),
    visitId: visit.id,
    visitNumber: visit.number,
    carId: visit.carId,
    plate: visit.car.plate,
    model: visit.car.model,
  }));
}

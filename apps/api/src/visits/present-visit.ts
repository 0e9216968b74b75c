import { Stage, type Visit } from '@pullbook/contracts';
import type * as rows from '@pullbook/database';

/** What must be read with a visit. */
export const visitParts = {
  car: { include: { customer: true } },
  tuner: { select: { name: true } },
  stageEntries: { orderBy: { id: 'asc' } },
} as const;

type VisitRow = rows.Visit & {
  car: rows.Car & { customer: rows.Customer };
  tuner: { name: string } | null;
  stageEntries: rows.StageEntry[];
};

/** A visit as it goes out. */
export function presentVisit(row: VisitRow): Visit {
  const { car, tuner } = row;
  return {
    id: row.id,
    number: row.number,
    carId: car.id,
    plate: car.plate,
    model: car.model,
    customerId: car.customer.id,
    customerName: car.customer.name,
    customerPhone: car.customer.phone,
    stage: Stage.parse(row.stage),
    stages: row.stageEntries.map((entry) => ({
      stage: Stage.parse(entry.stage),
      enteredAt: entry.enteredAt.toISOString(),
      by: entry.by,
      note: entry.note,
    })),
    wishes: row.wishes,
    bay: row.bay,
    tunerId: row.tunerId,
    tunerName: tuner?.name ?? null,
    bookedFor: row.bookedFor?.toISOString() ?? null,
    promisedAt: row.promisedAt?.toISOString() ?? null,
    revision: row.revision,
    createdAt: row.createdAt.toISOString(),
  };
}

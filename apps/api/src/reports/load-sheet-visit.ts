import { CarLimits, SettingRange } from '@pullbook/contracts';
import type { Pull, WorkshopTransaction } from '@pullbook/database';
import type { JobSheet } from '../paper/job-sheet.js';
import { presentPaperHeader } from '../people/present-people.js';
import { DomainError } from '../plumbing/domain-error.js';

type FromVisit =
  | 'workshopName'
  | 'paperHeader'
  | 'visitId'
  | 'visitNumber'
  | 'plate'
  | 'model'
  | 'modelYear'
  | 'customerName'
  | 'customerPhone'
  | 'wishes'
  | 'bay'
  | 'tunerName'
  | 'bookedFor'
  | 'promisedAt'
  | 'controller'
  | 'overBoostCutKpa';

/** What a job sheet takes straight from the visit, its car and its pulls. */
export interface SheetVisit {
  readonly carId: string;
  readonly sheet: Pick<JobSheet, FromVisit> & { readonly pulls: readonly Pull[] };
}

/**
 * Loads a visit as the job sheet needs it.
 *
 * @throws DomainError not-found
 */
export async function loadSheetVisit(db: WorkshopTransaction, visitId: string): Promise<SheetVisit> {
  const visit = await db.visit.findFirst({
    where: { id: visitId },
    include: {
      workshop: { select: { name: true, paperHeader: true } },
      car: { include: { customer: true, controller: true } },
      tuner: { select: { name: true } },
      pulls: { orderBy: [{ presetId: 'asc' }, { number: 'asc' }] },
    },
  });
  if (visit === null) throw new DomainError('not-found', 'this workshop has no such visit');
  const { car, workshop, tuner, pulls } = visit;
  return {
    carId: car.id,
    sheet: {
      workshopName: workshop.name,
      paperHeader: presentPaperHeader(workshop),
      visitId,
      visitNumber: visit.number,
      plate: car.plate,
      model: car.model,
      modelYear: car.modelYear,
      customerName: car.customer.name,
      customerPhone: car.customer.phone,
      wishes: visit.wishes,
      bay: visit.bay,
      tunerName: tuner === null ? null : tuner.name,
      bookedFor: isoOf(visit.bookedFor),
      promisedAt: isoOf(visit.promisedAt),
      controller: car.controller && sheetController(car.controller),
      overBoostCutKpa: CarLimits.parse(car.limits).overBoostCutKpa,
      pulls,
    },
  };
}

function isoOf(instant: Date | null): string | null {
  return instant === null ? null : instant.toISOString();
}

interface ControllerRow {
  readonly name: string;
  readonly loop: string;
  readonly presetSlots: number;
  readonly hasTimedOverride: boolean;
  readonly dutyPct: unknown;
  readonly holdPct: unknown;
}

function sheetController(row: ControllerRow): NonNullable<JobSheet['controller']> {
  return {
    name: row.name,
    loop: row.loop === 'closed' ? 'closed' : 'open',
    presetSlots: row.presetSlots,
    hasTimedOverride: row.hasTimedOverride,
    dutyPct: SettingRange.parse(row.dutyPct),
    holdPct: SettingRange.nullable().parse(row.holdPct),
  };
}

import { CarLimits, Mechanics, vinCheckDigit, type Car } from '@pullbook/contracts';
import type * as rows from '@pullbook/database';

/** What must be read with a car. */
export const carParts = {
  customer: { select: { name: true } },
  controller: { select: { name: true } },
} as const;

type CarRow = rows.Car & { customer: { name: string }; controller: { name: string } | null };

/** A car as it goes out. */
export function presentCar(row: CarRow): Car {
  return {
    id: row.id,
    customerId: row.customerId,
    customerName: row.customer.name,
    plate: row.plate,
    model: row.model,
    modelYear: row.modelYear,
    vin: row.vin,
    vinCheckDigit: vinCheckDigit(row.vin),
    buildCode: row.buildCode,
    controllerId: row.controllerId,
    controllerName: row.controller?.name ?? null,
    mechanics: Mechanics.parse(row.mechanics),
    limits: CarLimits.parse(row.limits),
    note: row.note,
    revision: row.revision,
    createdAt: row.createdAt.toISOString(),
  };
}

import { IntakeNew, type Units } from '@pullbook/contracts';
import { readValues, type ReadResult } from '../../../../components/form/read-values';
import type { Faults } from '../../../../components/form/use-draft';

/** What the desk types; fields are named by their path in the contract. */
export const emptyIntake = {
  'customer.name': '',
  'customer.phone': '',
  'customer.email': '',
  'car.plate': '',
  'car.model': '',
  'car.modelYear': '',
  'car.vin': '',
  'visit.stage': 'arrived',
  'visit.wishes': '',
  'visit.bay': '',
  'visit.tunerId': '',
  'visit.bookedFor': '',
  'visit.promisedAt': '',
};
export type IntakeValues = typeof emptyIntake;

/** A preset that the customer asks for, as typed. */
export interface WantedDraft {
  readonly key: number;
  readonly name: string;
  readonly purpose: string;
  readonly target: string;
}

/** Records that are in the book already and are used as they are. */
export interface Chosen {
  readonly customer: { readonly id: string; readonly name: string } | null;
  readonly car: { readonly id: string; readonly plate: string; readonly model: string } | null;
}

/** The whole intake as the server wants it, or the faults by field. */
export function readIntake(
  values: IntakeValues,
  wanted: readonly WantedDraft[],
  chosen: Chosen,
  units: Units,
): ReadResult<IntakeNew> {
  const rows = wanted.filter(
    (row) => row.name.trim() !== '' || row.purpose.trim() !== '' || row.target.trim() !== '',
  );
  const wantedValues = Object.fromEntries(
    rows.flatMap((row, index) => [
      [`wantedPresets.${index}.name`, row.name],
      [`wantedPresets.${index}.purpose`, row.purpose],
      [`wantedPresets.${index}.targetKpa`, row.target],
    ]),
  );
  const read = readValues({ ...values, ...wantedValues }, units, IntakeNew, (from) => ({
    customer:
      chosen.customer === null
        ? {
            name: from.text('customer.name'),
            phone: from.textOrNull('customer.phone'),
            email: from.textOrNull('customer.email'),
          }
        : { id: chosen.customer.id },
    car:
      chosen.car === null
        ? {
            plate: from.text('car.plate').toUpperCase(),
            model: from.text('car.model'),
            modelYear: from.numberOrNull('car.modelYear'),
            vin: from.textOrNull('car.vin'),
          }
        : { id: chosen.car.id },
    visit: {
      stage: from.text('visit.stage'),
      wishes: from.text('visit.wishes'),
      bay: from.textOrNull('visit.bay'),
      tunerId: from.textOrNull('visit.tunerId'),
      bookedFor: from.instantOrNull('visit.bookedFor'),
      promisedAt: from.instantOrNull('visit.promisedAt'),
    },
    wantedPresets: rows.map((_, index) => ({
      name: from.text(`wantedPresets.${index}.name`),
      purpose: from.text(`wantedPresets.${index}.purpose`),
      targetKpa: from.kpaOrNull(`wantedPresets.${index}.targetKpa`),
    })),
  }));
  return read;
}

/** The faults of one wanted preset, by its place among the rows that are not blank. */
export function faultsOfWanted(faults: Faults, index: number): { name?: string; target?: string } {
  const name = faults[`wantedPresets.${index}.name`];
  const target = faults[`wantedPresets.${index}.targetKpa`];
  return { ...(name === undefined ? {} : { name }), ...(target === undefined ? {} : { target }) };
}

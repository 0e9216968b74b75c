import * as z from 'zod';
import { Id, Instant, LimitKpa, Line, Note, PageQuery, RecordRevision } from '../basics/basics.js';
import { CarNew } from '../cars/cars.js';
import { CustomerNew } from '../customers/customers.js';
import { stages } from './stages.js';

export const Stage = z.enum(stages);
export type Stage = z.infer<typeof Stage>;

export const StageEntry = z
  .object({ stage: Stage, enteredAt: Instant, by: Line, note: Note })
  .meta({ id: 'StageEntry' });

export const Visit = z
  .object({
    id: Id,
    /** Running number within the workshop, as printed on the job sheet. */
    number: z.number().int().min(1),
    carId: Id,
    plate: Line,
    model: Line,
    customerId: Id,
    customerName: Line,
    customerPhone: z.string().nullable(),
    stage: Stage,
    stages: z.array(StageEntry),
    wishes: Note,
    bay: z.string().trim().max(40).nullable(),
    tunerId: Id.nullable(),
    tunerName: Line.nullable(),
    bookedFor: Instant.nullable(),
    promisedAt: Instant.nullable(),
    revision: RecordRevision,
    createdAt: Instant,
  })
  .meta({ id: 'Visit' });
export type Visit = z.infer<typeof Visit>;

const visitValues = {
  wishes: Note,
  bay: z.string().trim().max(40).nullable(),
  tunerId: Id.nullable(),
  bookedFor: Instant.nullable(),
  promisedAt: Instant.nullable(),
};

export const VisitNew = z
  .object({
    carId: Id,
    stage: z.enum(['booked', 'arrived']).default('booked'),
    wishes: Note.default(''),
    bay: visitValues.bay.default(null),
    tunerId: Id.nullable().default(null),
    bookedFor: Instant.nullable().default(null),
    promisedAt: Instant.nullable().default(null),
  })
  .meta({ id: 'VisitNew' });
export type VisitNew = z.infer<typeof VisitNew>;
export const VisitChange = z.object(visitValues).partial();
export const StageChange = z.object({ stage: Stage, note: Note.default('') }).meta({ id: 'StageChange' });
export const VisitQuery = PageQuery.extend({
  stage: Stage.optional(),
  carId: Id.optional(),
  open: z.stringbool().optional(),
});

/** A preset that the customer asked for at the desk; its ceiling is agreed later, by a tuner. */
export const WantedPreset = z.object({
  name: Line,
  purpose: Note.default(''),
  targetKpa: LimitKpa.nullable().default(null),
});

/** A whole intake: customer, car, visit and wanted presets, all or nothing. */
export const IntakeNew = z
  .object({
    customer: z.union([z.object({ id: Id }).strict(), CustomerNew]),
    car: z.union([z.object({ id: Id }).strict(), CarNew.omit({ customerId: true })]),
    visit: VisitNew.omit({ carId: true }),
    wantedPresets: z.array(WantedPreset).max(20).default([]),
  })
  .meta({ id: 'IntakeNew' });
export type IntakeNew = z.infer<typeof IntakeNew>;
export const Intake = z
  .object({ customerId: Id, carId: Id, visitId: Id, presetIds: z.array(Id) })
  .meta({ id: 'Intake' });
export type Intake = z.infer<typeof Intake>;

/** Customers and cars on record that look like the ones being typed in. */
export const LookalikeQuery = z.object({
  name: z.string().max(120).optional(),
  phone: z.string().max(40).optional(),
  email: z.string().max(200).optional(),
  plate: z.string().max(16).optional(),
  vin: z.string().max(17).optional(),
});
export const Lookalikes = z
  .object({
    customers: z.array(z.object({ id: Id, name: Line, phone: z.string().nullable(), why: z.string() })),
    cars: z.array(
      z.object({ id: Id, plate: Line, model: Line, customerId: Id, customerName: Line, why: z.string() }),
    ),
  })
  .meta({ id: 'Lookalikes' });
export type Lookalikes = z.infer<typeof Lookalikes>;

import * as z from 'zod';
import { Id, Instant, LimitKpa, Line, Note, PageQuery, RecordRevision } from '../basics/basics.js';
import { AirAndFuel, noAirAndFuel } from '../engine/air-and-fuel.js';

export const Plate = z.string().trim().min(1).max(16);

/** ISO 3779: 17 characters without I, O and Q. The check digit is a hint, not a rule: not every market uses it. */
export const Vin = z
  .string()
  .trim()
  .toUpperCase()
  .regex(/^[A-HJ-NPR-Z0-9]{17}$/, 'a VIN has 17 letters and digits, without I, O and Q');

/** Limits of the car as the workshop found or set them; null where not known. All kPa gauge. */
export const CarLimits = z
  .object({
    overBoostCutKpa: LimitKpa.nullable(),
    sensorFullScaleKpa: LimitKpa.nullable(),
    actuatorKpa: LimitKpa.nullable(),
    turboKpa: LimitKpa.nullable(),
    engineKpa: LimitKpa.nullable(),
  })
  .meta({ id: 'CarLimits', description: 'No ceiling may stand above the lowest of these' });
export type CarLimits = z.infer<typeof CarLimits>;

/** The car's mechanical data, as far as the workshop knows it. */
export const Mechanics = z
  .object({
    engineCode: z.string().trim().max(40).nullable(),
    displacementL: z.number().positive().max(20).nullable(),
    cylinderCount: z.number().int().min(1).max(16).nullable(),
    fuel: z.string().trim().max(40).nullable(),
    turbo: z.string().trim().max(80).nullable(),
    actuatorSpringKpa: LimitKpa.nullable(),
    gearRatios: z.array(z.number().positive().max(30)).max(10),
    finalDriveRatio: z.number().positive().max(20).nullable(),
    tyreRollingCircumferenceM: z.number().positive().max(5).nullable(),
    revLimitRpm: z.number().int().positive().max(20000).nullable(),
    airAndFuel: AirAndFuel.default(noAirAndFuel),
  })
  .meta({ id: 'Mechanics' });
export type Mechanics = z.infer<typeof Mechanics>;

/** Mechanics as a change brings them: air and fuel stay as they are where they are left out. */
export const MechanicsChange = Mechanics.extend({ airAndFuel: AirAndFuel.optional() }).meta({
  id: 'MechanicsChange',
});

export const noMechanics: Mechanics = {
  engineCode: null,
  displacementL: null,
  cylinderCount: null,
  fuel: null,
  turbo: null,
  actuatorSpringKpa: null,
  gearRatios: [],
  finalDriveRatio: null,
  tyreRollingCircumferenceM: null,
  revLimitRpm: null,
  airAndFuel: noAirAndFuel,
};

export const noLimits: CarLimits = {
  overBoostCutKpa: null,
  sensorFullScaleKpa: null,
  actuatorKpa: null,
  turboKpa: null,
  engineKpa: null,
};

export const Car = z
  .object({
    id: Id,
    customerId: Id,
    customerName: Line,
    plate: Plate,
    model: Line,
    modelYear: z.number().int().min(1900).max(2100).nullable(),
    vin: Vin.nullable(),
    vinCheckDigit: z.enum(['none', 'agrees', 'differs']),
    buildCode: z.string().trim().max(80).nullable(),
    controllerId: Id.nullable(),
    controllerName: Line.nullable(),
    mechanics: Mechanics,
    limits: CarLimits,
    note: Note,
    revision: RecordRevision,
    createdAt: Instant,
  })
  .meta({ id: 'Car' });
export type Car = z.infer<typeof Car>;

export const CarNew = z
  .object({
    customerId: Id,
    plate: Plate,
    model: Line,
    modelYear: z.number().int().min(1900).max(2100).nullable().default(null),
    vin: Vin.nullable().default(null),
    buildCode: z.string().trim().max(80).nullable().default(null),
    controllerId: Id.nullable().default(null),
    mechanics: Mechanics.default(noMechanics),
    limits: CarLimits.default(noLimits),
    note: Note.default(''),
  })
  .meta({ id: 'CarNew' });
export type CarNew = z.infer<typeof CarNew>;

/** What the front desk may change; the rest of CarChange is the tuner's and the owner's. */
export const carFieldsOfDesk = ['customerId', 'plate', 'model', 'modelYear', 'vin', 'note'] as const;

export const CarChange = z
  .object({
    customerId: Id,
    plate: Plate,
    model: Line,
    modelYear: z.number().int().min(1900).max(2100).nullable(),
    vin: Vin.nullable(),
    buildCode: z.string().trim().max(80).nullable(),
    controllerId: Id.nullable(),
    mechanics: MechanicsChange,
    limits: CarLimits,
    note: Note,
  })
  .partial();
export const CarQuery = PageQuery.extend({ q: z.string().max(100).optional(), customerId: Id.optional() });

import * as z from 'zod';
import { BoostKpa, Id, Instant, LimitKpa, Line, Note, RecordRevision } from '../basics/basics.js';
import { readinessKeys } from './readiness-keys.js';

export const PlaceKind = z.enum(['dyno-cell', 'closed-course']);

/** The air of the day; null where nobody measured. */
export const AirOfDay = z
  .object({
    temperatureC: z.number().min(-40).max(60).nullable(),
    pressureAbsKpa: z.number().min(50).max(110).nullable(),
    humidityPct: z.number().min(0).max(100).nullable(),
  })
  .meta({ id: 'AirOfDay' });

export const ReadinessKey = z.enum(readinessKeys);
export type ReadinessKey = z.infer<typeof ReadinessKey>;

export const ReadinessItem = z
  .object({ key: ReadinessKey, question: z.string(), ok: z.boolean(), note: Note })
  .meta({ id: 'ReadinessItem' });

export const ReadinessCheck = z
  .object({
    items: z.array(ReadinessItem),
    overBoostCutKpa: LimitKpa.nullable(),
    idleVacuumKpa: BoostKpa.nullable(),
    passed: z.boolean(),
    /** What is still open, in plain words. */
    missing: z.array(z.string()),
    checkedBy: Line.nullable(),
    checkedAt: Instant.nullable(),
  })
  .meta({ id: 'ReadinessCheck' });
export type ReadinessCheck = z.infer<typeof ReadinessCheck>;

export const ReadinessAnswer = z
  .object({
    items: z
      .array(z.object({ key: ReadinessKey, ok: z.boolean(), note: Note.default('') }))
      .max(readinessKeys.length),
    overBoostCutKpa: LimitKpa.nullable(),
    idleVacuumKpa: BoostKpa.nullable().default(null),
  })
  .meta({ id: 'ReadinessAnswer' });
export type ReadinessAnswer = z.infer<typeof ReadinessAnswer>;

const sessionValues = {
  placeKind: PlaceKind,
  place: Line,
  driver: Line,
  passenger: Line,
  fuel: z.string().trim().max(60),
  air: AirOfDay,
};

export const TuningSession = z
  .object({
    id: Id,
    visitId: Id,
    number: z.number().int().min(1),
    ...sessionValues,
    readiness: ReadinessCheck,
    startedAt: Instant,
    revision: RecordRevision,
  })
  .meta({ id: 'TuningSession' });
export type TuningSession = z.infer<typeof TuningSession>;

export const TuningSessionNew = z
  .object({
    ...sessionValues,
    fuel: sessionValues.fuel.default(''),
    air: AirOfDay.default({ temperatureC: null, pressureAbsKpa: null, humidityPct: null }),
  })
  .meta({ id: 'TuningSessionNew' });
export type TuningSessionNew = z.infer<typeof TuningSessionNew>;
export const TuningSessionChange = z.object(sessionValues).partial();

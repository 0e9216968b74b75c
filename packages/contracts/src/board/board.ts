import * as z from 'zod';
import { Id, Instant, Line } from '../basics/basics.js';
import { DriftAlarm } from '../outlook/drift-alarm.js';
import { PresetState } from '../presets/presets.js';
import { Stage } from '../visits/visits.js';

/** All that the peak strip shows, in kPa gauge. */
export const StripFigures = z
  .object({
    baseKpa: z.number().nullable(),
    targetKpa: z.number().nullable(),
    toleranceKpa: z.number(),
    ceilingKpa: z.number().nullable(),
    pulls: z.array(z.object({ number: z.number().int(), peakKpa: z.number(), isVoid: z.boolean() })),
    next: z.object({ lowKpa: z.number(), highKpa: z.number() }).nullable(),
  })
  .meta({ id: 'StripFigures' });
export type StripFigures = z.infer<typeof StripFigures>;

export const BoardCard = z
  .object({
    visitId: Id,
    number: z.number().int(),
    revision: z.number().int(),
    stage: Stage,
    plate: Line,
    model: Line,
    carId: Id,
    customerName: Line,
    tunerName: Line.nullable(),
    bay: z.string().nullable(),
    bookedFor: Instant.nullable(),
    promisedAt: Instant.nullable(),
    presets: z.array(
      z.object({
        presetId: Id,
        name: Line,
        slot: z.number().int(),
        state: PresetState,
        strip: StripFigures,
        /** The drift alarm that stands; null while none does. */
        drift: DriftAlarm.nullable(),
      }),
    ),
    /** What holds it up, or what comes next, in one plain sentence. */
    status: z.string(),
    /** The same without drift alarms, for who shows those of the presets beside it. */
    statusBesidesDrift: z.string(),
    needsAttention: z.boolean(),
  })
  .meta({ id: 'BoardCard' });
export type BoardCard = z.infer<typeof BoardCard>;

/** How many visits that match stand at each stage; of collected ones none, unless they were asked for. */
export const StageCounts = z.record(Stage, z.number().int().min(0)).meta({ id: 'StageCounts' });
export type StageCounts = z.infer<typeof StageCounts>;

/**
 * The cards, stage by stage; within a stage what is promised (of the booked: what is to come in) soonest comes first.
 * Where a stage counts more visits than it has cards, the rest is to be had by a higher `perStage`.
 */
export const Board = z
  .object({
    cards: z.array(BoardCard),
    counts: StageCounts,
    /** Names of those who work on a car of the board. */
    tuners: z.array(Line),
    asOf: Instant,
  })
  .meta({ id: 'Board' });
export type Board = z.infer<typeof Board>;
export const BoardQuery = z.object({
  collected: z.stringbool().default(false),
  /** Most cards for each stage. */
  perStage: z.coerce.number().int().min(1).max(400).default(100),
  /** Words that must all be found in plate, model, VIN, customer, telephone, bay or visit number. */
  q: z.string().trim().max(100).default(''),
  /** Name of the tuner whose cars are wanted. */
  tuner: z.string().trim().max(120).default(''),
});
export type BoardQuery = z.infer<typeof BoardQuery>;

/** What a server-sent event of `/api/v1/events` carries: which record changed; the reader fetches it anew. */
export const ChangeEvent = z
  .object({ noun: z.string(), id: Id, visitId: Id.nullable() })
  .meta({ id: 'ChangeEvent' });
export type ChangeEvent = z.infer<typeof ChangeEvent>;

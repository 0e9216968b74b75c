import * as z from 'zod';
import {
  DutyPct,
  HoldPct,
  Id,
  Instant,
  LimitKpa,
  Line,
  Note,
  PageQuery,
  RecordRevision,
} from '../basics/basics.js';
import { DriftAlarm } from '../outlook/drift-alarm.js';

export const PresetKind = z.enum(['standing', 'timed-override']);

/**
 * draft: goal not agreed, or no pull yet; on-test: pulls on record; proven: a tolerance interval (ISO 16269-6) over the
 * pulls at the stored settings lies inside target, tolerance and ceiling, with a heat-soaked pull among them;
 * signed-off: sealed with a sign-off; replaced: a newer preset stands in its slot.
 */
export const PresetState = z.enum(['draft', 'on-test', 'proven', 'signed-off', 'replaced']);
export type PresetState = z.infer<typeof PresetState>;

const presetValues = {
  name: Line,
  purpose: Note,
  slot: z.number().int().min(1).max(20),
  kind: PresetKind,
  holdSeconds: z.number().positive().max(60).nullable(),
  targetKpa: LimitKpa.nullable(),
  toleranceKpa: z.number().positive().max(30),
  ceilingKpa: LimitKpa.nullable(),
  dutyPct: DutyPct.nullable(),
  gateHoldPct: HoldPct.nullable(),
  correctionStrength: z.number().nullable(),
};

/** One revision of a preset's settings: written once, never changed. */
export const PresetRevision = z
  .object({ revision: RecordRevision, ...presetValues, reason: Note, madeBy: Line, madeAt: Instant })
  .meta({ id: 'PresetRevision' });
export type PresetRevision = z.infer<typeof PresetRevision>;

/** What the pulls at the stored settings prove, or so far promise. */
export const PresetProof = z
  .object({
    isProven: z.boolean(),
    /** Share of all future pulls that is promised inside the tolerance, and the confidence in it. */
    coverageRatio: z.number(),
    confidenceRatio: z.number(),
    meanKpa: z.number().nullable(),
    /** Where that share of all pulls lies so far; null for less than two pulls. */
    lowKpa: z.number().nullable(),
    highKpa: z.number().nullable(),
    highestPeakKpa: z.number().nullable(),
    usablePulls: z.number().int(),
    heatSoakedPulls: z.number().int(),
    pullsAskedFor: z.number().int(),
    /** Usable pulls in all that would likely do, if mean and scatter stay; null where no number would. */
    pullsLikelyNeeded: z.number().int().nullable(),
    /** Numbers of the pulls at the stored settings, of the newest visit. */
    pullNumbers: z.array(z.number().int()),
  })
  .meta({ id: 'PresetProof' });
export type PresetProof = z.infer<typeof PresetProof>;

export const Preset = z
  .object({
    id: Id,
    carId: Id,
    ...presetValues,
    state: PresetState,
    /** What is missing before the state can move on, in plain words. */
    missing: z.array(z.string()),
    /** Null while goal or duty are missing. */
    proof: PresetProof.nullable(),
    /** The drift alarm that stands; null while none does. */
    drift: DriftAlarm.nullable(),
    revision: RecordRevision,
    createdAt: Instant,
  })
  .meta({ id: 'Preset' });
export type Preset = z.infer<typeof Preset>;

export const PresetNew = z
  .object({
    name: Line,
    purpose: Note.default(''),
    slot: z.number().int().min(1).max(20),
    kind: PresetKind.default('standing'),
    holdSeconds: z.number().positive().max(60).nullable().default(null),
    targetKpa: LimitKpa.nullable().default(null),
    toleranceKpa: z.number().positive().max(30).default(4),
    ceilingKpa: LimitKpa.nullable().default(null),
    dutyPct: DutyPct.nullable().default(null),
    gateHoldPct: HoldPct.nullable().default(null),
    correctionStrength: z.number().nullable().default(null),
  })
  .meta({ id: 'PresetNew' });
export type PresetNew = z.infer<typeof PresetNew>;

export const PresetChange = z
  .object({ ...presetValues, reason: Note })
  .partial()
  .meta({ id: 'PresetChange', description: 'Makes a new revision; old ones stay readable' });
export type PresetChange = z.infer<typeof PresetChange>;
export const PresetQuery = PageQuery;

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

export const PresetKind = z.enum(['standing', 'timed-override']);

/**
 * draft: goal not agreed, or no pull yet; on-test: pulls on record; proven: the advice accepts a duty and it is
 * stored; signed-off: sealed with a sign-off; replaced: a newer preset stands in its slot.
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

export const Preset = z
  .object({
    id: Id,
    carId: Id,
    ...presetValues,
    state: PresetState,
    /** What is missing before the state can move on, in plain words. */
    missing: z.array(z.string()),
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

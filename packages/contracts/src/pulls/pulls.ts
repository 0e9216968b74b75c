import * as z from 'zod';
import { BoostKpa, DutyPct, HoldPct, Id, Instant, Line, Note, Reason } from '../basics/basics.js';

const measured = {
  rawPeakKpa: BoostKpa.nullable(),
  settledKpa: BoostKpa.nullable(),
  overshootPct: z.number().min(-100).max(500).nullable(),
  riseTimeS: z.number().min(0).max(120).nullable(),
  onsetRpm: z.number().min(0).max(20000).nullable(),
  intakeC: z.number().min(-60).max(250).nullable(),
};

/** One full-load run, as recorded. Never changed: a wrong one is voided with a reason. */
export const Pull = z
  .object({
    id: Id,
    tuningSessionId: Id,
    presetId: Id,
    presetRevision: z.number().int().min(1),
    /** Running number within the preset's pulls of this visit. */
    number: z.number().int().min(1),
    dutyPct: DutyPct,
    holdPct: HoldPct.nullable(),
    gear: z.number().int().min(1).max(12).nullable(),
    /** The recorded peak. */
    peakKpa: BoostKpa,
    ...measured,
    heatSoaked: z.boolean(),
    source: z.enum(['typed', 'log']),
    logId: Id.nullable(),
    usable: z.boolean(),
    reasons: z.array(Reason),
    /** Things to mind that do not make it unusable: past the ceiling, over the step limit. */
    warnings: z.array(Reason),
    voidedAt: Instant.nullable(),
    voidReason: Note.nullable(),
    note: Note,
    recordedBy: Line,
    recordedAt: Instant,
  })
  .meta({ id: 'Pull' });
export type Pull = z.infer<typeof Pull>;

export const PullNew = z
  .object({
    presetId: Id,
    dutyPct: DutyPct,
    holdPct: HoldPct.nullable().default(null),
    gear: z.number().int().min(1).max(12).nullable().default(null),
    peakKpa: BoostKpa,
    heatSoaked: z.boolean().default(false),
    note: Note.default(''),
    /** When the pull was driven, if it is sent later than that. */
    recordedAt: Instant.optional(),
  })
  .meta({ id: 'PullNew' });
export type PullNew = z.infer<typeof PullNew>;
export const PullVoid = z.object({ reason: Line }).meta({ id: 'PullVoid' });
export const PullQuery = z.object({ presetId: Id.optional() });
export const PullList = z.object({ items: z.array(Pull) }).meta({ id: 'PullList' });

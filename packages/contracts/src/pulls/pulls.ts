import * as z from 'zod';
import {
  BoostKpa,
  DutyPct,
  HoldPct,
  Id,
  Instant,
  Line,
  Note,
  Reason,
  RecordRevision,
} from '../basics/basics.js';

const measured = {
  rawPeakKpa: BoostKpa.nullable(),
  settledKpa: BoostKpa.nullable(),
  overshootPct: z.number().min(-100).max(500).nullable(),
  riseTimeS: z.number().min(0).max(120).nullable(),
  onsetRpm: z.number().min(0).max(20000).nullable(),
  intakeC: z.number().min(-60).max(250).nullable(),
  gradientPct: z.number().min(-100).max(100).nullable(),
};

/** Oscillation about the settled boost, as a log shows it. */
export const Hunting = z
  .object({
    frequencyHz: z.number().positive(),
    /** Null where the swings do not decay measurably. */
    dampingRatio: z.number().nullable(),
    /** Half the distance from crest to trough. */
    amplitudeKpa: z.number().min(0),
  })
  .meta({ id: 'Hunting' });

/** Settled boost of a pull: above ambient, since it was one at full load. */
export const SettledKpa = z.number().min(1).max(600);
export const RiseTimeS = z.number().positive().max(120);
/** How long a timed override was seen to hold before boost fell back. */
export const HeldForS = z.number().min(0).max(120);
export const CorrectionStrength = z.number().min(0).max(100_000);

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
    /** Closed loop only: the strength that was set, and the hunting that a log showed. */
    correctionStrength: z.number().nullable(),
    hunting: Hunting.nullable(),
    /** Timed override only: whether it was on, and how long it was seen to hold. */
    overrideOn: z.boolean().nullable(),
    heldForS: z.number().nullable(),
    source: z.enum(['typed', 'log']),
    logId: Id.nullable(),
    usable: z.boolean(),
    reasons: z.array(Reason),
    /** Things to mind that do not make it unusable: past the ceiling, over the step limit. */
    warnings: z.array(Reason),
    voidedAt: Instant.nullable(),
    voidReason: Note.nullable(),
    /** Somebody looked the car over after this pull and found nothing wrong: no fault is read into it or those before. */
    foundSoundAt: Instant.nullable(),
    foundSoundNote: Note.nullable(),
    foundSoundBy: Line.nullable(),
    note: Note,
    recordedBy: Line,
    recordedAt: Instant,
  })
  .meta({ id: 'Pull' });
export type Pull = z.infer<typeof Pull>;

/**
 * Revision of the preset that the tuner saw while driving: refused with `goal-changed` where target, tolerance, ceiling
 * or kind are others by now.
 */
export const SeenRevision = RecordRevision.optional();

export const PullNew = z
  .object({
    presetId: Id,
    presetRevision: SeenRevision,
    dutyPct: DutyPct,
    holdPct: HoldPct.nullable().default(null),
    gear: z.number().int().min(1).max(12).nullable().default(null),
    peakKpa: BoostKpa,
    settledKpa: SettledKpa.nullable().default(null),
    riseTimeS: RiseTimeS.nullable().default(null),
    onsetRpm: z.number().positive().max(20000).nullable().default(null),
    heatSoaked: z.boolean().default(false),
    correctionStrength: CorrectionStrength.nullable().default(null),
    overrideOn: z.boolean().nullable().default(null),
    heldForS: HeldForS.nullable().default(null),
    note: Note.default(''),
    /** When the pull was driven, if it is sent later than that. */
    recordedAt: Instant.optional(),
  })
  .meta({ id: 'PullNew' });
export type PullNew = z.infer<typeof PullNew>;
export const PullVoid = z.object({ reason: Line }).meta({ id: 'PullVoid' });
/** What was looked at; nothing wrong was found. */
export const PullFoundSound = z.object({ note: Note.default('') }).meta({ id: 'PullFoundSound' });
export const PullQuery = z.object({ presetId: Id.optional() });
export const PullList = z.object({ items: z.array(Pull) }).meta({ id: 'PullList' });

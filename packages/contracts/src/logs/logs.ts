import * as z from 'zod';
import { DutyPct, HoldPct, Id, Instant, Reason } from '../basics/basics.js';
import { CorrectionStrength, HeldForS, Hunting } from '../pulls/pulls.js';

export const LogChannel = z
  .object({ header: z.string(), quantity: z.string(), unit: z.string() })
  .meta({ id: 'LogChannel' });

/** One pull found in a log; a figure that the log cannot tell is null, and a reason says why. */
export const FoundPull = z
  .object({
    startS: z.number(),
    endS: z.number(),
    gear: z.number().int().nullable(),
    peakKpa: z.number().nullable(),
    rawPeakKpa: z.number().nullable(),
    settledKpa: z.number().nullable(),
    overshootPct: z.number().nullable(),
    riseTimeS: z.number().nullable(),
    onsetRpm: z.number().nullable(),
    intakeC: z.number().nullable(),
    gradientPct: z.number().nullable().default(null),
    hunting: Hunting.nullable().default(null),
    usable: z.boolean(),
    reasons: z.array(Reason),
  })
  .meta({ id: 'FoundPull' });
export type FoundPull = z.infer<typeof FoundPull>;

export const LogAnalysis = z
  .object({
    channels: z.array(LogChannel),
    sampleRateHz: z.number().nullable(),
    pulls: z.array(FoundPull),
    warnings: z.array(Reason),
  })
  .meta({ id: 'LogAnalysis' });
export type LogAnalysis = z.infer<typeof LogAnalysis>;

/** A few hundred points of one pull, thinned so that its extremes stay. */
export const PullTrace = z
  .object({
    timeS: z.array(z.number()),
    boostKpa: z.array(z.number().nullable()),
    engineSpeedRpm: z.array(z.number().nullable()),
    throttlePct: z.array(z.number().nullable()),
  })
  .meta({ id: 'PullTrace' });

/** A stored log: its original bytes stay as they came, this is what was computed from them. */
export const Log = z
  .object({
    id: Id,
    tuningSessionId: Id,
    fileName: z.string(),
    byteCount: z.number().int().min(0),
    sha256: z.string(),
    analysis: LogAnalysis,
    analysisVersion: z.string(),
    /** One trace for each found pull, in order. */
    traces: z.array(PullTrace),
    /** Found pulls that have been confirmed: index in analysis.pulls → id of the recorded pull. */
    confirmed: z.array(z.object({ index: z.number().int().min(0), pullId: Id })),
    /** True when these very bytes were on record already. */
    alreadyOnRecord: z.boolean(),
    recordedAt: Instant,
  })
  .meta({ id: 'Log' });
export type Log = z.infer<typeof Log>;
export const LogList = z.object({ items: z.array(Log.omit({ traces: true })) }).meta({ id: 'LogList' });

/** Takes found pulls into the book, with the duty that was set for them. */
export const LogConfirm = z
  .object({
    presetId: Id,
    dutyPct: DutyPct,
    holdPct: HoldPct.nullable().default(null),
    heatSoaked: z.boolean().default(false),
    correctionStrength: CorrectionStrength.nullable().default(null),
    overrideOn: z.boolean().nullable().default(null),
    heldForS: HeldForS.nullable().default(null),
    indexes: z.array(z.number().int().min(0)).min(1).max(100),
  })
  .meta({ id: 'LogConfirm' });
export type LogConfirm = z.infer<typeof LogConfirm>;
export const LogQuery = z.object({ fileName: z.string().max(200).optional() });

import * as z from 'zod';
import { DutyPct, HoldPct, Id, Instant, Line, Reason } from '../basics/basics.js';
import { CorrectionStrength, HeldForS, Hunting, SeenRevision } from '../pulls/pulls.js';
import { ChannelReading, LogShape } from './channel-reading.js';

/** A column of the file, as it was understood. */
export const LogChannel = z
  .object({
    header: z.string(),
    /** Which of several columns of that header, from 0. */
    occurrence: z.number().int().min(0).default(0),
    quantity: z.string(),
    unit: z.string(),
    /** Of a pressure: as it was understood. */
    reference: z.enum(['gauge', 'absolute']).nullable().default(null),
    /** Told by a person or recipe; by name and printed unit; or by name and values; or not at all. */
    basis: z.enum(['recipe', 'name-and-unit', 'name-and-values', 'none']).default('none'),
    /** False where quantity or unit is a guess that a person should confirm. */
    certain: z.boolean().default(true),
    /** Some of its first cells as they stand in the file. */
    samples: z.array(z.string()).default([]),
    /** In the file's unit; null for a column without numbers. */
    lowest: z.number().nullable().default(null),
    highest: z.number().nullable().default(null),
  })
  .meta({ id: 'LogChannel' });
export type LogChannel = z.infer<typeof LogChannel>;

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
    /** What tells logs of the same logger; null for one analysed before that was kept. */
    shape: LogShape.nullable().default(null),
    layout: z.object({ delimiter: z.string(), decimalMark: z.string() }).nullable().default(null),
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
    /** Which computation this is; 1 is that of when the log came in. */
    version: z.number().int().min(1),
    analysis: LogAnalysis,
    /** Version of the code that made it. */
    analysisVersion: z.string(),
    /** How a person or recipe said that the file is to be read; null where it was recognised throughout. */
    reading: ChannelReading.nullable(),
    /** The recipe that it was read by. */
    recipeId: Id.nullable(),
    /** One trace for each found pull, in order. */
    traces: z.array(PullTrace),
    /** Found pulls of this version that are in the book: index in analysis.pulls → id of the recorded pull. */
    confirmed: z.array(z.object({ index: z.number().int().min(0), pullId: Id })),
    /** True when these very bytes were on record already. */
    alreadyOnRecord: z.boolean(),
    recordedAt: Instant,
  })
  .meta({ id: 'Log' });
export type Log = z.infer<typeof Log>;
export const LogList = z.object({ items: z.array(Log.omit({ traces: true })) }).meta({ id: 'LogList' });

/** A log of a visit in a line. */
export const LogHead = z
  .object({
    id: Id,
    tuningSessionId: Id,
    fileName: z.string(),
    byteCount: z.number().int().min(0),
    pullCount: z.number().int().min(0),
    /** How many of them are in the book. */
    confirmedCount: z.number().int().min(0),
    recordedAt: Instant,
  })
  .meta({ id: 'LogHead' });
export type LogHead = z.infer<typeof LogHead>;
export const LogHeadList = z.object({ items: z.array(LogHead) }).meta({ id: 'LogHeadList' });

/** Takes found pulls into the book, with the duty that was set for them. */
export const LogConfirm = z
  .object({
    presetId: Id,
    presetRevision: SeenRevision,
    dutyPct: DutyPct,
    holdPct: HoldPct.nullable().default(null),
    heatSoaked: z.boolean().default(false),
    correctionStrength: CorrectionStrength.nullable().default(null),
    overrideOn: z.boolean().nullable().default(null),
    heldForS: HeldForS.nullable().default(null),
    indexes: z.array(z.number().int().min(0)).min(1).max(100),
    /** Version of the log that the indexes were seen in; refused where it is no longer the newest. */
    version: z.number().int().min(1).optional(),
  })
  .meta({ id: 'LogConfirm' });
export type LogConfirm = z.infer<typeof LogConfirm>;

/** One of the computations of a log, all of which stay. */
export const LogVersionHead = z
  .object({
    number: z.number().int().min(1),
    codeVersion: z.string(),
    pullCount: z.number().int().min(0),
    reason: z.string(),
    madeBy: z.string(),
    madeAt: Instant,
  })
  .meta({ id: 'LogVersionHead' });
export const LogVersionList = z.object({ items: z.array(LogVersionHead) }).meta({ id: 'LogVersionList' });
export const LogVersionParams = z.object({ id: Id, number: z.coerce.number().int().min(1).max(100_000) });

/** Computes a log anew from its original bytes; the result becomes its newest version. */
export const LogAnalyse = z
  .object({
    /** `workshop`: the settings that the workshop holds to now. `recorded`: those of the newest version. */
    settings: z.enum(['workshop', 'recorded']).default('workshop'),
    /** How the file is to be read; null: by the workshop's recipe for its shape, else as recognised. */
    reading: ChannelReading.nullable().optional(),
    reason: Line.optional(),
  })
  .meta({ id: 'LogAnalyse' });
export type LogAnalyse = z.infer<typeof LogAnalyse>;
export const LogQuery = z.object({ fileName: z.string().max(200).optional() });

import * as z from 'zod';
import { Id, Instant, Reason } from '../basics/basics.js';

/** One channel of a log, as its trace is kept: samples in the base unit, whatever the file was written in. */
export const TraceChannel = z
  .object({
    /** What people call it. */
    name: z.string(),
    /** Head of its column in the file; null for a channel that was computed. */
    header: z.string().nullable(),
    quantity: z.string(),
    unit: z.string(),
    sampleCount: z.number().int().min(0),
    /** Usual time between two samples; null for fewer than two. */
    intervalS: z.number().nullable(),
    lowest: z.number().nullable(),
    highest: z.number().nullable(),
    /** The same but for single wild samples: what a scale needs to show. */
    usualLow: z.number().nullable(),
    usualHigh: z.number().nullable(),
  })
  .meta({ id: 'TraceChannel' });
export type TraceChannel = z.infer<typeof TraceChannel>;

/** One level of the pyramid: rows, then bins of 4, 16, 64 … rows with the lowest and highest sample of each. */
export const TraceLevel = z
  .object({ rowsPerBin: z.number().int().min(1), binCount: z.number().int().min(0) })
  .meta({ id: 'TraceLevel' });
export type TraceLevel = z.infer<typeof TraceLevel>;

/** A pull of the log, with what the book knows of it once it was taken in. */
export const TracePull = z
  .object({
    index: z.number().int().min(0),
    /** Full load begins and ends. */
    startS: z.number(),
    endS: z.number(),
    gear: z.number().int().nullable(),
    peakKpa: z.number().nullable(),
    settledKpa: z.number().nullable(),
    usable: z.boolean(),
    reasons: z.array(Reason),
    /** The pull in the book; null where it was not taken in. */
    record: z
      .object({
        pullId: Id,
        number: z.number().int(),
        presetId: Id,
        presetName: z.string(),
        dutyPct: z.number(),
        targetKpa: z.number().nullable(),
        toleranceKpa: z.number(),
        ceilingKpa: z.number().nullable(),
      })
      .nullable(),
  })
  .meta({ id: 'TracePull' });
export type TracePull = z.infer<typeof TracePull>;

/** All that is needed to fetch and draw the traces of a log. */
export const TraceIndex = z
  .object({
    state: z.literal('ready'),
    /** Names what the tiles were made from; part of their addresses, so that a tile never changes. */
    build: z.string(),
    log: z.object({ id: Id, fileName: z.string(), recordedAt: Instant }),
    visitId: Id,
    carId: Id,
    plate: z.string(),
    rowCount: z.number().int().min(0),
    fromS: z.number(),
    toS: z.number(),
    timeOriginS: z.number(),
    sampleRateHz: z.number().nullable(),
    /** Bins of one tile. */
    tileBins: z.number().int().min(1),
    /** Finest first. */
    levels: z.array(TraceLevel),
    /** Position in this list is the channel's number in addresses. */
    channels: z.array(TraceChannel),
    pulls: z.array(TracePull),
    warnings: z.array(Reason),
  })
  .meta({ id: 'TraceIndex' });
export type TraceIndex = z.infer<typeof TraceIndex>;

/** The traces are being made; ask again in a moment. */
export const TraceBuilding = z
  .object({ state: z.literal('building'), share: z.number().min(0).max(1) })
  .meta({ id: 'TraceBuilding' });
export const TraceAnswer = z.discriminatedUnion('state', [TraceIndex, TraceBuilding]);
export type TraceAnswer = z.infer<typeof TraceAnswer>;

/**
 * Address of one tile. `channel` is a number or `time`. A tile of the lowest level holds samples; above it the lowest
 * samples of all its bins, then the highest: singles, NaN where there is none. A tile of `time` holds doubles: when
 * each bin starts, and at last when the bin after it does. Little-endian.
 */
export const TraceTileParams = z.object({
  id: Id,
  build: z.string().regex(/^[0-9a-f]{16}$/),
  channel: z.union([z.literal('time'), z.coerce.number().int().min(0).max(5000)]),
  level: z.coerce.number().int().min(0).max(30),
  tile: z.coerce.number().int().min(0).max(10_000_000),
});
export type TraceTileParams = z.infer<typeof TraceTileParams>;

/** Which stretch of a log to write as CSV, of which channels (all when left out), in which units. */
export const TraceCutQuery = z.object({
  fromS: z.coerce.number(),
  toS: z.coerce.number(),
  channels: z
    .string()
    .regex(/^\d{1,4}(,\d{1,4})*$/)
    .optional(),
  pressure: z.enum(['kPa', 'bar', 'psi']).default('kPa'),
  temperature: z.enum(['C', 'F']).default('C'),
});
export type TraceCutQuery = z.infer<typeof TraceCutQuery>;

import * as z from 'zod';
import { Id, Instant, Reason } from '../basics/basics.js';
import { ChannelQuantity, ChannelReading, LogShape } from './channel-reading.js';

/** Of an upload by the tus protocol: the last part of its address. */
export const UploadId = z.string().regex(/^[0-9a-f]{32}$/);
export const UploadParams = z.object({ uploadId: UploadId });

/** Takes a file that was uploaded in parts into a tuning session. */
export const LogFromUpload = z
  .object({ uploadId: UploadId, reading: ChannelReading.nullable().default(null) })
  .meta({ id: 'LogFromUpload' });
export type LogFromUpload = z.infer<typeof LogFromUpload>;

/** A column by its head alone. */
export const HeadColumn = z
  .object({
    header: z.string(),
    occurrence: z.number().int().min(0),
    quantity: ChannelQuantity,
    /** As printed or told; null where only the values would tell. */
    unit: z.string().nullable(),
    samples: z.array(z.string()),
  })
  .meta({ id: 'HeadColumn' });

/** What the first lines of an uploaded log show, for a person to say how it is to be read. */
export const UploadLook = z
  .object({
    fileName: z.string(),
    byteCount: z.number().int().min(0),
    /** The first lines as they stand in the file. */
    lines: z.array(z.string()),
    /** Null where no table can be made of them; `problem` says why. */
    shape: LogShape.nullable(),
    columns: z.array(HeadColumn),
    delimiter: z.string().nullable(),
    decimalMark: z.string().nullable(),
    recipeId: Id.nullable(),
    problem: z.string().nullable(),
  })
  .meta({ id: 'UploadLook' });
export type UploadLook = z.infer<typeof UploadLook>;
export const UploadLookBody = z
  .object({ reading: ChannelReading.nullable().default(null) })
  .meta({ id: 'UploadLookBody' });
export type UploadLookBody = z.infer<typeof UploadLookBody>;

/** A tuning session that a log may belong to, and what speaks for it. */
export const SessionSuggestion = z
  .object({
    tuningSessionId: Id,
    /** Empty where nothing speaks for it. */
    reasons: z.array(Reason),
  })
  .meta({ id: 'SessionSuggestion' });
export type SessionSuggestion = z.infer<typeof SessionSuggestion>;

/** A file that came in whole and that nobody has taken into a tuning session yet. */
export const WaitingLog = z
  .object({
    uploadId: UploadId,
    fileName: z.string(),
    byteCount: z.number().int().min(0),
    uploadedAt: Instant,
    /** When the sender's device last wrote the file; null where it did not say. */
    writtenAt: Instant.nullable(),
    sha256: z.string(),
    /** Recipe of the workshop that fits its columns. */
    recipeName: z.string().nullable(),
    /** Why its first lines are no log; null where they are one. */
    problem: z.string().nullable(),
    /** Where these very bytes are on record already. */
    onRecord: z.array(z.object({ logId: Id, tuningSessionId: Id, visitId: Id, plate: z.string() })),
    /** An earlier waiting file of the very same bytes. */
    sameAsUploadId: UploadId.nullable(),
    /** Open tuning sessions that something speaks for, likeliest first. */
    suggestions: z.array(SessionSuggestion),
    /** The one that is clearly likelier than any other; null where there is none. Nothing is assigned by it. */
    likelySessionId: Id.nullable(),
  })
  .meta({ id: 'WaitingLog' });
export type WaitingLog = z.infer<typeof WaitingLog>;

/** A tuning session whose visit still takes logs. */
export const OpenSession = z
  .object({
    tuningSessionId: Id,
    number: z.number().int().min(1),
    place: z.string(),
    startedAt: Instant,
    visitId: Id,
    visitNumber: z.number().int().min(1),
    carId: Id,
    plate: z.string(),
    model: z.string(),
  })
  .meta({ id: 'OpenSession' });
export type OpenSession = z.infer<typeof OpenSession>;

/** All that waits to be assigned, and what it can be assigned to. */
export const WaitingLogList = z
  .object({ items: z.array(WaitingLog), sessions: z.array(OpenSession) })
  .meta({ id: 'WaitingLogList' });
export type WaitingLogList = z.infer<typeof WaitingLogList>;

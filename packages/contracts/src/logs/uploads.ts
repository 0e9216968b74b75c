import * as z from 'zod';
import { Id } from '../basics/basics.js';
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

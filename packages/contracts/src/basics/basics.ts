import * as z from 'zod';

/** A UUIDv7 of one of the workshop's records. */
export const Id = z.uuid().meta({ id: 'Id', description: 'UUIDv7 of a record' });

/** An instant, RFC 3339 with offset. */
export const Instant = z.iso.datetime({ offset: true }).meta({ id: 'Instant' });

/** Boost, kPa gauge: from full vacuum to four atmospheres over ambient. */
export const BoostKpa = z.number().min(-100).max(600);

/** A pressure that a person sets as a goal or limit, kPa gauge. */
export const LimitKpa = z.number().positive().max(600);

/** Share of the solenoid's period, per cent. */
export const DutyPct = z.number().min(0).max(100);

/** Share of the target up to which the gate is held shut, per cent. */
export const HoldPct = z.number().min(0).max(200);

/** One line that a person types. */
export const Line = z.string().trim().min(1).max(120);

/** A few sentences that a person types; may be empty. */
export const Note = z.string().trim().max(2000);

/** What the ETag counts: raised by one at each change of a record. */
export const RecordRevision = z.number().int().min(1);

export const PageQuery = z.object({
  limit: z.coerce.number().int().min(1).max(200).default(50),
  cursor: z.string().max(200).optional(),
});

/** A page of a list; `nextCursor` is null on the last one. */
export const pageOf = <T extends z.ZodType>(
  item: T,
): z.ZodObject<{ items: z.ZodArray<T>; nextCursor: z.ZodNullable<z.ZodString> }> =>
  z.object({ items: z.array(item), nextCursor: z.string().nullable() });

/** What `pageOf` describes. */
export interface Page<T> {
  items: T[];
  nextCursor: string | null;
}

export const IdParams = z.object({ id: Id });

/** A number of a sentence with its unit; `to` is the upper end of a range. Pressures are kPa gauge. */
export const Amount = z
  .object({
    value: z.number(),
    to: z.number().optional(),
    unit: z.enum(['kPa', '%', 'points', 'Hz', 's', 'r/min']),
  })
  .meta({ id: 'Amount', description: 'A number with its unit; `points` are points of per cent' });

/** A reason in plain words, with a code that programs can rely on. */
export const Reason = z
  .object({
    code: z.string(),
    text: z.string(),
    /** The same text in pieces, so that its numbers can be shown in other units; left out where it has none. */
    pieces: z.array(z.union([z.string(), Amount])).optional(),
  })
  .meta({ id: 'Reason' });
export type Reason = z.infer<typeof Reason>;

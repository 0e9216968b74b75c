import * as z from 'zod';
import { Id, Instant, Line, Note, PageQuery, RecordRevision } from '../basics/basics.js';

export const Customer = z
  .object({
    id: Id,
    name: Line,
    phone: z.string().trim().max(40).nullable(),
    email: z.email().max(200).nullable(),
    note: Note,
    carCount: z.number().int().min(0),
    revision: RecordRevision,
    createdAt: Instant,
  })
  .meta({ id: 'Customer' });
export type Customer = z.infer<typeof Customer>;

export const CustomerNew = z
  .object({
    name: Line,
    phone: z.string().trim().max(40).nullable().default(null),
    email: z.email().max(200).nullable().default(null),
    note: Note.default(''),
  })
  .meta({ id: 'CustomerNew' });
export type CustomerNew = z.infer<typeof CustomerNew>;

export const CustomerChange = z
  .object({
    name: Line,
    phone: z.string().trim().max(40).nullable(),
    email: z.email().max(200).nullable(),
    note: Note,
  })
  .partial();
export const CustomerQuery = PageQuery.extend({ q: z.string().max(100).optional() });

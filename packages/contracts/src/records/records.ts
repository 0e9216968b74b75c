import * as z from 'zod';
import { Id, Instant, Line, PageQuery, pageOf } from '../basics/basics.js';

/** One line of the book's own history: who did what to which record, and when. */
export const AuditEvent = z
  .object({
    id: Id,
    at: Instant,
    by: Line,
    action: z.string(),
    noun: z.string(),
    recordId: Id,
    summary: z.string(),
  })
  .meta({ id: 'AuditEvent' });
export type AuditEvent = z.infer<typeof AuditEvent>;
export const AuditQuery = PageQuery.extend({ recordId: Id.optional() });
export const AuditPage = pageOf(AuditEvent).meta({ id: 'AuditPage' });

import * as z from 'zod';

/** Every business outcome that is not success; each maps to one HTTP status in the API. */
export const ErrorCode = z.enum([
  'invalid-request',
  'not-signed-in',
  'wrong-email-or-password',
  'not-allowed',
  'not-found',
  'gone',
  'conflict',
  'changed-meanwhile',
  'precondition-missing',
  'idempotency-key-reused',
  'still-at-work',
  'recorded-already',
  'goal-changed',
  'void-already',
  'duty-out-of-range',
  'hold-out-of-range',
  'ceiling-missing',
  'ceiling-not-above-target',
  'ceiling-above-car-limit',
  'readiness-not-passed',
  'preset-not-of-this-car',
  'preset-not-accepted',
  'visit-closed',
  'stage-not-reachable',
  'already-signed',
  'sign-off-incomplete',
  'log-unreadable',
  'too-large',
  'unsupported-media-type',
  'too-many-requests',
  'busy',
  'internal',
]);
export type ErrorCode = z.infer<typeof ErrorCode>;

export const FieldError = z
  .object({ field: z.string(), message: z.string() })
  .meta({ id: 'FieldError', description: 'Which field is wrong, and what would have been right' });
export type FieldError = z.infer<typeof FieldError>;

/** RFC 9457 problem details. */
export const Problem = z
  .object({
    type: z.string(),
    title: z.string(),
    status: z.number().int(),
    detail: z.string().optional(),
    instance: z.string().optional(),
    code: ErrorCode,
    requestId: z.string(),
    errors: z.array(FieldError).optional(),
  })
  .meta({ id: 'Problem', description: 'RFC 9457 problem details' });
export type Problem = z.infer<typeof Problem>;

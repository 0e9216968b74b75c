import * as z from 'zod';
import { Id } from '../basics/basics.js';

export const DriftRule = z.enum(['shewhart-single-pull', 'ewma-moving-average']);
export type DriftRule = z.infer<typeof DriftRule>;

/** A drift alarm in short: what boards and lists show. */
export const DriftAlarm = z
  .object({
    rule: DriftRule,
    /** Latest moving average against the baseline, %. */
    driftPct: z.number(),
    /** Pull at which the rule fired first. */
    pullId: Id,
    visitId: Id,
    visitNumber: z.number().int(),
    pullNumber: z.number().int(),
    /** Other weather than in the baseline, not corrected for, may explain it. */
    mayBeConditions: z.boolean(),
    /** In one plain sentence. */
    text: z.string(),
  })
  .meta({ id: 'DriftAlarm' });
export type DriftAlarm = z.infer<typeof DriftAlarm>;

import * as z from 'zod';
import { Reason } from '../basics/basics.js';
import { SettingRange } from '../controllers/controllers.js';

/** What the closed-loop pulls at the last correction strength show, and the step to take. */
export const CorrectionAdvice = z
  .object({
    action: z.enum(['keep', 'lower', 'raise', 'stop']),
    /** Strength to pull next, or to keep, in the controller's own unit; null with `stop`. */
    strength: z.number().nullable(),
    /** Mean settled error at the last strength; positive above target. */
    settledErrorKpa: z.number(),
    frequencyHz: z.number().nullable(),
    dampingRatio: z.number().nullable(),
    reasons: z.array(Reason),
  })
  .meta({ id: 'CorrectionAdvice' });
export type CorrectionAdvice = z.infer<typeof CorrectionAdvice>;

/** The next correction strength of a preset on a closed-loop controller, from the logs of this visit. */
export const NextCorrection = z
  .object({
    /** Whether this car's controller corrects itself at all. */
    applies: z.boolean(),
    ready: z.boolean(),
    missing: z.array(z.string()),
    cautions: z.array(z.string()),
    advice: CorrectionAdvice.nullable(),
    keptStrength: z.number().nullable(),
    /** Strength of the last pull that counts. */
    lastStrength: z.number().nullable(),
    range: SettingRange.nullable(),
    /** Numbers of the logged pulls that this answer rests on. */
    restsOnPulls: z.array(z.number().int()),
  })
  .meta({ id: 'NextCorrection' });
export type NextCorrection = z.infer<typeof NextCorrection>;

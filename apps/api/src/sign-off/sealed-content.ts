import { PresetEvidence, SignOffItem, TuningSession, Units } from '@pullbook/contracts';
import { z } from 'zod';

/** A pull as the sign-off covers it. */
export const SealedPull = z.object({
  id: z.string(),
  presetId: z.string(),
  presetRevision: z.number(),
  tuningSessionId: z.string(),
  number: z.number(),
  dutyPct: z.number(),
  holdPct: z.number().nullable(),
  gear: z.number().nullable(),
  peakKpa: z.number(),
  heatSoaked: z.boolean(),
  usable: z.boolean(),
  source: z.string(),
  logSha256: z.string().nullable(),
  voidReason: z.string().nullable(),
  recordedBy: z.string(),
  recordedAt: z.string(),
});

/**
 * All that a sign-off covers, as it is sealed: enough to write the customer's report from it alone, and to check each
 * figure against the pulls that it came from. The customer's name is not in it.
 */
export const SealedContent = z.object({
  form: z.literal('pullbook sign-off 1'),
  workshop: z.object({ id: z.string(), name: z.string(), units: Units }),
  visit: z.object({ id: z.string(), number: z.number() }),
  car: z.object({ id: z.string(), plate: z.string(), model: z.string(), vin: z.string().nullable() }),
  tuningSessions: z.array(TuningSession),
  presets: z.array(PresetEvidence),
  pulls: z.array(SealedPull),
  items: z.array(SignOffItem),
  /** Of the checklist that the items come from; sign-offs from before checklists had revisions do not say. */
  checklistRevision: z.number().nullable().default(null),
  signedName: z.string(),
  signedBy: z.string(),
  signedAt: z.string(),
});
export type SealedContent = z.infer<typeof SealedContent>;

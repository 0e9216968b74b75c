import * as z from 'zod';
import { RecordRevision } from '../basics/basics.js';

/** Filter, thresholds and definitions of the log analysis; meaning and range of each come with `LogSettings`. */
export const PullSettings = z
  .object({
    fullThrottlePct: z.number(),
    liftS: z.number(),
    leastStretchS: z.number(),
    leastRiseRpm: z.number(),
    shiftDropPct: z.number(),
    shiftS: z.number(),
    leastBoostKpa: z.number(),
    hampelHalfWindowS: z.number(),
    hampelThreshold: z.number(),
    smoothWindowS: z.number(),
    smoothLeastSamples: z.number().int(),
    settledBandPct: z.number(),
    settledWindowS: z.number(),
    riseLowPct: z.number(),
    riseHighPct: z.number(),
    onsetPct: z.number(),
    leastDurationS: z.number(),
    leastSpanRpm: z.number(),
    leastRiseSamples: z.number().int(),
    leastBoostRateHz: z.number(),
    slipPct: z.number(),
    leanLambda: z.number(),
    knockRetardDeg: z.number(),
    trustedGears: z.array(z.number().int().min(1).max(10)).min(1).max(10),
  })
  .meta({ id: 'PullSettings' });
export type PullSettings = z.infer<typeof PullSettings>;

/** The settings that logs are analysed with from now on; results on record keep those that made them. */
export const LogSettings = z
  .object({
    settings: PullSettings,
    defaults: PullSettings,
    revision: RecordRevision,
  })
  .meta({ id: 'LogSettings' });
export type LogSettings = z.infer<typeof LogSettings>;
/** Replaces what the workshop had changed: settings that are left out are the default ones. */
export const LogSettingsChange = z
  .object({ changes: PullSettings.partial() })
  .meta({ id: 'LogSettingsChange' });
export type LogSettingsChange = z.infer<typeof LogSettingsChange>;

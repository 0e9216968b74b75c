import * as z from 'zod';

/** The air at a place; the barometer as read there, or from the weather report's sea-level pressure and the height. */
export const AirRequest = z
  .object({
    temperatureC: z.number().min(0).max(60),
    humidityPct: z.number().min(0).max(100).default(50),
    barometerAbsKpa: z.number().min(30).max(115).nullable().default(null),
    seaLevelAbsKpa: z.number().min(87).max(109).nullable().default(null),
    altitudeM: z.number().min(-500).max(4500).default(0),
  })
  .meta({ id: 'AirRequest' });
export type AirRequest = z.infer<typeof AirRequest>;

export const PowerCorrection = z
  .object({
    standard: z.string(),
    factor: z.number(),
    /** Whether the air lies in the range that the standard states. */
    valid: z.boolean(),
    flags: z.array(z.string()),
  })
  .meta({ id: 'PowerCorrection' });

export const Air = z
  .object({
    barometerAbsKpa: z.number(),
    dryAbsKpa: z.number(),
    densityKgPerM3: z.number(),
    densityWithinPublishedRange: z.boolean(),
    /** Idle vacuum of a healthy warm engine, kPa below ambient: a hint, never a judgement. */
    idleVacuumHintKpa: z.object({ low: z.number(), high: z.number() }),
    corrections: z.array(PowerCorrection),
  })
  .meta({ id: 'Air' });
export type Air = z.infer<typeof Air>;

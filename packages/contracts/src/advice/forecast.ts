import * as z from 'zod';
import { BoostKpa, LimitKpa } from '../basics/basics.js';

const conditions = {
  gear: z.number().int().min(1).max(10),
  gradientPct: z.number().min(-30).max(30),
  intakeC: z.number().min(-45).max(120),
  barometerAbsKpa: z.number().min(30).max(115),
  heatSoakC: z.number().min(-50).max(150),
};

/** Usable pulls of one preset at unchanged settings, and the conditions to forecast for. */
export const ForecastRequest = z
  .object({
    ceilingKpa: LimitKpa,
    pulls: z
      .array(
        z.object({
          peakKpa: BoostKpa,
          gear: conditions.gear.nullable().default(null),
          gradientPct: conditions.gradientPct.nullable().default(null),
          intakeC: conditions.intakeC.nullable().default(null),
          barometerAbsKpa: conditions.barometerAbsKpa.nullable().default(null),
          heatSoakC: conditions.heatSoakC.nullable().default(null),
        }),
      )
      .min(1)
      .max(200),
    conditions: z.object(conditions),
  })
  .meta({ id: 'ForecastRequest' });
export type ForecastRequest = z.infer<typeof ForecastRequest>;

export const Forecast = z
  .object({
    medianKpa: z.number(),
    lowKpa: z.number(),
    highKpa: z.number(),
    level: z.number(),
    probabilityOverCeiling: z.number(),
    effects: z.array(
      z.object({
        condition: z.string(),
        status: z.enum(['unknown', 'none-seen', 'seen']),
        effectPct: z.number(),
        uncertaintyPct: z.number(),
        unit: z.string(),
      }),
    ),
    /** Conditions whose effect these pulls do not tell; the range allows for them. */
    unknown: z.array(z.string()),
    /** Conditions outside the range of these pulls. */
    outside: z.array(z.string()),
  })
  .meta({ id: 'Forecast' });
export type Forecast = z.infer<typeof Forecast>;

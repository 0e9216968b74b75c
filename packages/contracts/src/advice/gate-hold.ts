import * as z from 'zod';
import { BoostKpa, HoldPct, Reason } from '../basics/basics.js';
import { SettingRange } from '../controllers/controllers.js';
import { Goal, Prediction } from './advice.js';

export const HoldRange = z
  .object({ holdMin: HoldPct, holdMax: HoldPct, holdStep: z.number().positive().max(200) })
  .meta({ id: 'HoldRange' });

export const GateHoldAdviceRequest = z
  .object({
    controller: HoldRange,
    goal: Goal.extend({ overshootLimitPct: z.number().positive().max(30) }),
    stepLimit: z.number().positive().max(10).default(10),
    riskLimit: z.number().positive().max(0.05).default(0.02),
    pulls: z
      .array(
        z.object({
          holdPct: HoldPct,
          peakKpa: BoostKpa,
          settledKpa: BoostKpa,
          riseTimeS: z.number().positive().max(120).nullable().default(null),
          onsetRpm: z.number().positive().max(20000).nullable().default(null),
        }),
      )
      .max(200),
    /** So many of the first pulls were made when the car was looked over and found sound: no fault is read into them. */
    soundPulls: z.number().int().min(0).max(200).optional(),
  })
  .meta({ id: 'GateHoldAdviceRequest' });
export type GateHoldAdviceRequest = z.infer<typeof GateHoldAdviceRequest>;

export const GateHoldAdvice = z
  .object({
    action: z.enum(['pull', 'repeat', 'accept', 'stop', 'back-to-duty']),
    holdPct: z.number().nullable(),
    prediction: Prediction.extend({ overshootPct: z.number(), probabilityOverLimit: z.number() }).nullable(),
    reasons: z.array(Reason),
    /** What raising the hold has brought so far; null where nothing was measured for it. */
    gain: z.object({ riseTimeS: z.number().nullable(), onsetRpm: z.number().nullable() }).nullable(),
  })
  .meta({ id: 'GateHoldAdvice' });
export type GateHoldAdvice = z.infer<typeof GateHoldAdvice>;

/** The next gate hold of a preset in a tuning session, once its duty is kept; or what is missing before there is one. */
export const NextGateHold = z
  .object({
    ready: z.boolean(),
    missing: z.array(z.string()),
    cautions: z.array(z.string()),
    advice: GateHoldAdvice.nullable(),
    /** Duty that the preset keeps, at which every pull of this search is driven. */
    dutyPct: z.number().nullable(),
    /** Gate hold that the preset keeps so far. */
    keptHoldPct: z.number().nullable(),
    highestHoldPct: z.number().nullable(),
    /** What the controller can be set to; null for one without a gate hold. */
    range: SettingRange.nullable(),
    stepLimit: z.number(),
    riskLimit: z.number(),
    overshootLimitPct: z.number(),
    /** Numbers of the pulls that this answer rests on, and of those that prove a found hold. */
    restsOnPulls: z.array(z.number().int()),
    provingPullNumbers: z.array(z.number().int()),
    /** Number of the last pull after which the car was looked over and found sound; null if none. */
    foundSoundAfterPull: z.number().int().nullable(),
    /** Numbers of pulls at this duty that cannot count here: they have no gate hold or no settled boost. */
    notCountedPulls: z.array(z.number().int()),
  })
  .meta({ id: 'NextGateHold' });
export type NextGateHold = z.infer<typeof NextGateHold>;

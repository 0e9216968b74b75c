import * as z from 'zod';
import { BoostKpa, DutyPct, HoldPct, LimitKpa, Reason } from '../basics/basics.js';
import { SettingRange } from '../controllers/controllers.js';

export const DutyRange = z
  .object({ dutyMin: DutyPct, dutyMax: DutyPct, dutyStep: z.number().positive().max(100) })
  .meta({ id: 'DutyRange' });

export const Goal = z
  .object({ targetKpa: LimitKpa, toleranceKpa: z.number().positive().max(100), ceilingKpa: LimitKpa })
  .meta({ id: 'Goal' });

/** A car of the same build that was tuned before: its usable pulls. */
export const EarlierCar = z
  .object({
    baseKpa: BoostKpa.nullable().default(null),
    pulls: z.array(z.object({ duty: DutyPct, peakKpa: BoostKpa })).max(200),
  })
  .meta({ id: 'EarlierCar' });
export type EarlierCar = z.infer<typeof EarlierCar>;

export const DutyAdviceRequest = z
  .object({
    controller: DutyRange,
    goal: Goal,
    stepLimit: z.number().positive().max(10).default(10),
    riskLimit: z.number().positive().max(0.05).default(0.02),
    baseKpa: BoostKpa.nullable().default(null),
    pulls: z.array(z.object({ duty: DutyPct, peakKpa: BoostKpa })).max(200),
    /** So many of the first pulls were made when the car was looked over and found sound: no fault is read into them. */
    soundPulls: z.number().int().min(0).max(200).optional(),
    earlierCars: z.array(EarlierCar).max(8).optional(),
  })
  .meta({ id: 'DutyAdviceRequest' });
export type DutyAdviceRequest = z.infer<typeof DutyAdviceRequest>;

export const Prediction = z
  .object({
    medianKpa: z.number(),
    lowKpa: z.number(),
    highKpa: z.number(),
    level: z.number(),
    probabilityOverCeiling: z.number(),
  })
  .meta({ id: 'Prediction' });
export type Prediction = z.infer<typeof Prediction>;

export const CurvePoint = z
  .object({ duty: z.number(), medianKpa: z.number(), lowKpa: z.number(), highKpa: z.number() })
  .meta({ id: 'CurvePoint' });

export const DutyAdvice = z
  .object({
    action: z.enum(['pull', 'repeat', 'accept', 'stop']),
    duty: z.number().nullable(),
    prediction: Prediction.nullable(),
    reasons: z.array(Reason),
    curve: z.array(CurvePoint),
  })
  .meta({ id: 'DutyAdvice' });
export type DutyAdvice = z.infer<typeof DutyAdvice>;

/**
 * All that an advice for a preset rests on but the pulls themselves. With it a device works out the next pull
 * without network, from the same function as the server.
 */
export const AdviceBasis = z
  .object({
    dutyRange: SettingRange.nullable(),
    targetKpa: LimitKpa.nullable(),
    toleranceKpa: z.number(),
    ceilingKpa: LimitKpa.nullable(),
    /** Gate hold that the preset stores: only pulls at it tell what duty does. */
    gateHoldPct: HoldPct.nullable().default(null),
    /** Stored duty that an earlier visit proved or signed off on this car: a fair first pull of a car that came back. */
    provenDutyPct: DutyPct.nullable().default(null),
    baseKpa: BoostKpa.nullable(),
    /** Earlier cars of this build; left out where the workshop does not lean on them or has none. */
    earlierCars: z.array(EarlierCar).max(8).optional(),
    rules: z.object({
      stepLimit: z.number(),
      riskLimit: z.number(),
      /** Pulls at the accepted duty that the workshop asks for. */
      requiredPulls: z.number(),
    }),
    /** What is missing whatever was driven: readiness, a closed visit, a ceiling above the car's limits. */
    missing: z.array(z.string()),
  })
  .meta({ id: 'AdviceBasis' });
export type AdviceBasis = z.infer<typeof AdviceBasis>;

/** The next pull of a preset in a tuning session; without ceiling and readiness there is no advice, only what is missing. */
export const NextPull = z
  .object({
    ready: z.boolean(),
    missing: z.array(z.string()),
    cautions: z.array(z.string()),
    advice: DutyAdvice.nullable(),
    /** Numbers of the pulls that this answer rests on: a reader with other pulls holds an answer of yesterday. */
    restsOnPulls: z.array(z.number().int()),
    /** Number of the last pull after which the car was looked over and found sound; null if none. */
    foundSoundAfterPull: z.number().int().nullable(),
    /** Highest duty already driven for this preset, and how far the next one may go. */
    highestDutyPct: z.number().nullable(),
    stepLimit: z.number(),
    riskLimit: z.number(),
    basis: AdviceBasis,
  })
  .meta({ id: 'NextPull' });
export type NextPull = z.infer<typeof NextPull>;

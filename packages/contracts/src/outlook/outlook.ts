import * as z from 'zod';
import { Id, Instant, Line } from '../basics/basics.js';
import { Forecast } from '../advice/forecast.js';
import { DriftAlarm } from './drift-alarm.js';

export const ConditionName = z.enum(['gear', 'gradient', 'intake', 'barometer', 'heatSoak']);
export type ConditionName = z.infer<typeof ConditionName>;

/** Conditions as far as known. */
const conditions = {
  gear: z.number().nullable(),
  gradientPct: z.number().nullable(),
  intakeC: z.number().nullable(),
  barometerAbsKpa: z.number().nullable(),
  heatSoakC: z.number().nullable(),
};

/** A recorded peak at the stored settings, and what it would have been at reference conditions. */
export const OutlookPull = z
  .object({
    pullId: Id,
    visitId: Id,
    visitNumber: z.number().int(),
    tuningSessionId: Id,
    number: z.number().int(),
    recordedAt: Instant,
    peakKpa: z.number(),
    ...conditions,
    /** Null where no visit proves the preset or signs it off: there is no reference yet. */
    referenceKpa: z.number().nullable(),
    /** Standard uncertainty of the correction alone. */
    correctionUncertaintyKpa: z.number().nullable(),
    /** Conditions away from the reference, or not known, that it is not corrected for. */
    notCorrectedFor: z.array(ConditionName),
    /** baseline: what later pulls are held against; since: those; before: older than the baseline. */
    part: z.enum(['before', 'baseline', 'since']),
  })
  .meta({ id: 'OutlookPull' });
export type OutlookPull = z.infer<typeof OutlookPull>;

const ChartPoint = z.object({
  pullId: Id,
  plottedKpa: z.number(),
  lowKpa: z.number(),
  highKpa: z.number(),
  isOut: z.boolean(),
});

/** Drift since the baseline, by a chart of single pulls (Shewhart) and one of their moving average (EWMA). */
export const PresetDrift = z
  .object({
    alarm: DriftAlarm.nullable(),
    driftPct: z.number(),
    baselineVisitId: Id,
    baselineVisitNumber: z.number().int(),
    baselineSignedOff: z.boolean(),
    centreKpa: z.number(),
    /** Of single pulls; the baseline's own scatter, the preset's other pulls and common practice together. */
    sdKpa: z.number(),
    singles: z.array(ChartPoint),
    averages: z.array(ChartPoint),
    /** How far other weather than the baseline's, not corrected for, may move the peak, one standard deviation, %. */
    possiblePct: z.number(),
    /** In one plain sentence. */
    text: z.string(),
    /** What it rests on and what it leaves out, in plain words. */
    notes: z.array(z.string()),
  })
  .meta({ id: 'PresetDrift' });
export type PresetDrift = z.infer<typeof PresetDrift>;

/** known: the pulls tell; beyond: they tell, but not this far out; unknown: they do not tell. */
export const OutlookCell = Forecast.pick({
  medianKpa: true,
  lowKpa: true,
  highKpa: true,
  probabilityOverCeiling: true,
})
  .extend({
    status: z.enum(['known', 'beyond', 'unknown']),
    unknown: z.array(ConditionName),
    outside: z.array(ConditionName),
  })
  .meta({ id: 'OutlookCell' });
export type OutlookCell = z.infer<typeof OutlookCell>;

/** Forecasts over intake air (rows) and one other condition (columns). */
export const OutlookGrid = z
  .object({
    by: z.enum(['gear', 'height', 'gradient']),
    /** Gears, metres above the sea, or % uphill; for heights the barometer of the standard atmosphere. */
    columns: z.array(z.object({ value: z.number(), barometerAbsKpa: z.number().nullable() })),
    rows: z.array(z.object({ intakeC: z.number(), cells: z.array(OutlookCell) })),
  })
  .meta({ id: 'OutlookGrid' });
export type OutlookGrid = z.infer<typeof OutlookGrid>;

const Effect = Forecast.shape.effects.element.extend({ condition: ConditionName });

/** What a preset will peak at in other conditions. Not advice to drive: it says what it rests on. */
export const PresetForecast = z
  .object({
    ceilingKpa: z.number(),
    /** The workshop's limit for a chance of passing the ceiling, 0 to 1. */
    riskLimit: z.number(),
    /** Share of single pulls that the ranges are to hold. */
    level: z.number(),
    /** The pulls that it rests on. */
    pullIds: z.array(Id),
    /** What all conditions are that a grid does not vary. */
    reference: z.object(conditions),
    effects: z.array(Effect),
    grids: z.array(OutlookGrid),
    /** What it rests on and what it leaves out, in plain words. */
    notes: z.array(z.string()),
  })
  .meta({ id: 'PresetForecast' });
export type PresetForecast = z.infer<typeof PresetForecast>;

/** How a preset has aged and what it will do in other conditions, from its usable pulls at the stored settings. */
export const PresetOutlook = z
  .object({
    presetId: Id,
    carId: Id,
    name: Line,
    revision: z.number().int(),
    dutyPct: z.number().nullable(),
    gateHoldPct: z.number().nullable(),
    targetKpa: z.number().nullable(),
    toleranceKpa: z.number(),
    ceilingKpa: z.number().nullable(),
    /** In order of time. */
    pulls: z.array(OutlookPull),
    /** Conditions that peaks are brought to: those of the baseline. Null without one. */
    reference: z.object(conditions).nullable(),
    drift: PresetDrift.nullable(),
    /** Why drift is not watched; null where it is. */
    driftMissing: z.string().nullable(),
    forecast: PresetForecast.nullable(),
    /** Why there is no forecast; null where there is one. */
    forecastMissing: z.string().nullable(),
  })
  .meta({ id: 'PresetOutlook' });
export type PresetOutlook = z.infer<typeof PresetOutlook>;

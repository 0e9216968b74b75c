import * as z from 'zod';
import { Id, Line, RecordRevision } from '../basics/basics.js';
import { MapAir, MapLine } from './compressor-map.js';

/** What an engine sheet rests on, by the name of the field. */
export const EngineInput = z
  .object({
    key: z.string(),
    /** In plain words: 'volumetric efficiency'. */
    name: z.string(),
    value: z.number().nullable(),
    unit: z.string(),
    /** `assumed`: common practice, until somebody enters what this engine has. */
    basis: z.enum(['entered', 'assumed', 'missing']),
  })
  .meta({ id: 'EngineInput' });
export type EngineInput = z.infer<typeof EngineInput>;

export const CeilingCause = z.enum([
  'over-boost-cut',
  'sensor-full-scale',
  'actuator',
  'turbo',
  'engine',
  'injectors',
  'compressor-map',
]);
export type CeilingCause = z.infer<typeof CeilingCause>;

/** One of the limits that may set the ceiling. kPa gauge. */
export const CeilingRow = z
  .object({
    cause: CeilingCause,
    name: z.string(),
    /** As entered or computed; null where it is not known. */
    statedKpa: z.number().nullable(),
    /** Kept below it. */
    marginKpa: z.number(),
    limitKpa: z.number().nullable(),
    /** How far it lies above the limit that binds; below 0 for an estimate that lies lower and does not bind. */
    headroomKpa: z.number().nullable(),
    /** `binding`: the lowest of those that count. `counts`: known. `estimate`: rests on assumed values, so it only warns. */
    state: z.enum(['binding', 'counts', 'estimate', 'unknown']),
    /** Why this figure, or what is missing, in a sentence. */
    why: z.string(),
    /** Names of the inputs that it would take, or that are assumed. */
    open: z.array(z.string()),
  })
  .meta({ id: 'CeilingRow' });
export type CeilingRow = z.infer<typeof CeilingRow>;

/** A running point on the compressor map. */
export const MapPlaceOf = z
  .object({
    place: z.enum(['inside', 'beyond-surge', 'beyond-choke', 'above-map', 'below-map']),
    surgeMarginPct: z.number().nullable(),
    chokeMarginPct: z.number().nullable(),
    shaftSpeedRpm: z.number().nullable(),
  })
  .meta({ id: 'MapPlaceOf' });
export type MapPlaceOf = z.infer<typeof MapPlaceOf>;

/** One point of a line on the compressor map: corrected flow in the map's own reference air. */
export const MapRunPoint = z
  .object({
    engineSpeedRpm: z.number(),
    boostKpa: z.number(),
    flowKgPerS: z.number(),
    pressureRatio: z.number(),
  })
  .meta({ id: 'MapRunPoint' });
export type MapRunPoint = z.infer<typeof MapRunPoint>;

/** Estimated power at the crank: a band, never a single figure. */
export const EnginePower = z
  .object({
    powerKw: z.number(),
    lowKw: z.number(),
    highKw: z.number(),
    levelRatio: z.number(),
    torqueNm: z.number(),
    /** Relative standard uncertainty and what it is made of. */
    uncertaintyPct: z.number(),
    airUncertaintyPct: z.number(),
    mixtureUncertaintyPct: z.number(),
    fuelUncertaintyPct: z.number(),
  })
  .meta({ id: 'EnginePower' });
export type EnginePower = z.infer<typeof EnginePower>;

/** What becomes of air and fuel at one boost, at the rev limit. */
export const EnginePoint = z
  .object({
    at: z.enum(['target', 'ceiling', 'limit']),
    /** Null for the ceiling that the car's limits allow. */
    presetId: Id.nullable(),
    presetName: z.string().nullable(),
    boostKpa: z.number(),
    engineSpeedRpm: z.number(),
    pressureRatio: z.number(),
    efficiencyPct: z.number(),
    outletC: z.number(),
    chargeC: z.number(),
    densityRatio: z.number(),
    airKgPerS: z.number(),
    fuelKgPerS: z.number(),
    injectorDutyPct: z.number().nullable(),
    power: EnginePower,
    flowKgPerS: z.number(),
    place: MapPlaceOf.nullable(),
    /** Engine's line at this boost over its speed. */
    run: z.array(MapRunPoint),
  })
  .meta({ id: 'EnginePoint' });
export type EnginePoint = z.infer<typeof EnginePoint>;

/** Where a pull ran on the map. */
export const PullOnMap = z
  .object({
    pullId: Id,
    presetId: Id,
    presetName: Line,
    visitId: Id,
    number: z.number().int(),
    logId: Id.nullable(),
    peakKpa: z.number(),
    /** `log`: from its samples. `typed`: the engine speed of the peak is not on record, so it has no place. */
    basis: z.enum(['log', 'typed']),
    /** Air that it was reckoned with. */
    airC: z.number(),
    barometerAbsKpa: z.number(),
    airMeasured: z.boolean(),
    run: z.array(MapRunPoint),
    peak: MapRunPoint.nullable(),
    peakPlace: MapPlaceOf.nullable(),
    leastSurgeMarginPct: z.number().nullable(),
    leastChokeMarginPct: z.number().nullable(),
  })
  .meta({ id: 'PullOnMap' });
export type PullOnMap = z.infer<typeof PullOnMap>;

/** Goal of a preset beside what the car allows. */
export const PresetUnderCeiling = z
  .object({
    presetId: Id,
    name: Line,
    slot: z.number().int(),
    targetKpa: z.number().nullable(),
    ceilingKpa: z.number().nullable(),
    /** Ceiling of the car less that of the preset; below 0: it stands too high. */
    headroomKpa: z.number().nullable(),
  })
  .meta({ id: 'PresetUnderCeiling' });
export type PresetUnderCeiling = z.infer<typeof PresetUnderCeiling>;

/** Ceiling, way of air and fuel, power and the pulls on the compressor map: all that follows from a car's engine data. */
export const EngineSheet = z
  .object({
    carId: Id,
    revision: RecordRevision,
    inputs: z.array(EngineInput),
    air: z.object({ airC: z.number(), heightM: z.number(), barometerAbsKpa: z.number() }),
    /** Null where no limit counts. */
    ceilingKpa: z.number().nullable(),
    binds: CeilingCause.nullable(),
    limits: z.array(CeilingRow),
    presets: z.array(PresetUnderCeiling),
    /** What is missing before air and fuel can be reckoned, in plain words. */
    missing: z.array(z.string()),
    points: z.array(EnginePoint),
    map: z.object({ lines: z.array(MapLine), reference: MapAir, source: z.string() }).nullable(),
    pulls: z.array(PullOnMap),
  })
  .meta({ id: 'EngineSheet' });
export type EngineSheet = z.infer<typeof EngineSheet>;

/** The ceiling builder's answer alone. */
export const CarCeiling = EngineSheet.pick({ carId: true, ceilingKpa: true, binds: true, limits: true }).meta(
  {
    id: 'CarCeiling',
  },
);
export type CarCeiling = z.infer<typeof CarCeiling>;

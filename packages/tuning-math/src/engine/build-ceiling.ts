import { TooFewPointsError } from '../errors.js';
import { requireNumber } from '../require-number.js';

/** What may set the ceiling. */
export type CeilingCause =
  | 'over-boost-cut'
  | 'sensor-full-scale'
  | 'actuator'
  | 'turbo'
  | 'engine'
  | 'injectors'
  | 'compressor-map'
  | 'agreed';

/** Limits of a car as entered or computed, boost in gauge kPa; what is unknown is left out. */
export interface CeilingLimits {
  /** Boost at which the controller or engine management cuts. */
  readonly overBoostCutKpa?: number;
  /** Boost at which the sensor can read no higher (gauge; an absolute sensor's span less the barometer). */
  readonly sensorFullScaleKpa?: number;
  readonly actuatorKpa?: number;
  readonly turboKpa?: number;
  readonly engineKpa?: number;
  /** Boost at which the injectors reach their highest allowed duty: see `boostAtInjectorLimit`. */
  readonly injectorKpa?: number;
  /** Boost at which the engine's line on the compressor map comes too close to choke. */
  readonly mapKpa?: number;
  /** What workshop and customer agreed on. */
  readonly agreedKpa?: number;
}

/** Distances kept from limits that must not be touched at all, kPa. */
export interface CeilingMargins {
  /** Below the over-boost cut, so that scatter does not set it off. */
  readonly overBoostCutKpa: number;
  /** Below the sensor's full scale, so that a peak past the ceiling is still seen. */
  readonly sensorFullScaleKpa: number;
}

/** Margins used where none are given. Common practice, no source. */
export const DEFAULT_CEILING_MARGINS: CeilingMargins = { overBoostCutKpa: 5, sensorFullScaleKpa: 5 };

/** One limit, after its margin. */
export interface CeilingLimit {
  readonly cause: CeilingCause;
  /** As it was given. */
  readonly statedKpa: number;
  /** Kept below it, kPa. */
  readonly marginKpa: number;
  readonly limitKpa: number;
  /** How far this limit lies above the one that binds, kPa; 0 for the one that does. */
  readonly headroomKpa: number;
}

/** The level that no pull may pass, and why. */
export interface Ceiling {
  readonly ceilingKpa: number;
  readonly binds: CeilingCause;
  /** All limits that were given, lowest first. */
  readonly limits: readonly CeilingLimit[];
}

const FIELDS: readonly (readonly [keyof CeilingLimits, CeilingCause])[] = [
  ['overBoostCutKpa', 'over-boost-cut'],
  ['sensorFullScaleKpa', 'sensor-full-scale'],
  ['actuatorKpa', 'actuator'],
  ['turboKpa', 'turbo'],
  ['engineKpa', 'engine'],
  ['injectorKpa', 'injectors'],
  ['mapKpa', 'compressor-map'],
  ['agreedKpa', 'agreed'],
];

/**
 * The ceiling of a preset: the lowest of all limits known for the car, over-boost cut and sensor less their
 * margins. Use it before the first pull; there is no advice without a ceiling.
 *
 * @param limits gauge kPa each, above 0 up to 1000; at least one
 * @param margins kPa, 0 or more
 * @returns the ceiling, the limit that binds, and how far away the others are
 * @throws TooFewPointsError where no limit is given; NotFiniteError; OutOfRangeError, also where a margin
 *   eats its whole limit
 * Source: common practice, no source.
 * @example buildCeiling({ overBoostCutKpa: 160, turboKpa: 170 }) // 155 kPa, over-boost cut binds
 */
export function buildCeiling(
  limits: CeilingLimits,
  margins: CeilingMargins = DEFAULT_CEILING_MARGINS,
): Ceiling {
  requireNumber('buildCeiling', 'margins.overBoostCutKpa', margins.overBoostCutKpa, { min: 0, max: 100 });
  requireNumber('buildCeiling', 'margins.sensorFullScaleKpa', margins.sensorFullScaleKpa, {
    min: 0,
    max: 100,
  });
  const known = FIELDS.flatMap(([field, cause]) => {
    const valueKpa = limits[field];
    if (valueKpa === undefined) return [];
    const marginKpa = field === 'overBoostCutKpa' || field === 'sensorFullScaleKpa' ? margins[field] : 0;
    requireNumber('buildCeiling', field, valueKpa, { min: marginKpa, max: 1000, exclusive: true });
    return [{ cause, statedKpa: valueKpa, marginKpa, limitKpa: valueKpa - marginKpa }];
  }).sort((a, b) => a.limitKpa - b.limitKpa);
  const lowest = known[0];
  if (lowest === undefined) {
    throw new TooFewPointsError('buildCeiling', {
      argument: 'limits',
      value: 'none',
      allowed: 'to hold at least one limit',
    });
  }
  const ceilingKpa = lowest.limitKpa;
  const withHeadroom = known.map((limit) => ({ ...limit, headroomKpa: limit.limitKpa - ceilingKpa }));
  return { ceilingKpa, binds: lowest.cause, limits: withHeadroom };
}

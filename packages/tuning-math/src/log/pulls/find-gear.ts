import { median } from '../filter/hampel-filter.js';
import { freshSamples, valueAt, type Series } from '../filter/series.js';
import type { LogOptions } from '../log-options.js';
import type { PullData } from './pull-data.js';

/** Gear of a pull and where it comes from. */
export interface GearFinding {
  readonly gear: number | null;
  readonly gearBasis: 'channel' | 'ratios' | 'usual-gearing' | null;
}

const NO_GEAR: GearFinding = { gear: null, gearBasis: null };
const LEAST_ROAD_KMH = 15;
const RATIO_TOLERANCE = 0.12;
/** Engine speed for each km/h in gears 1 to 6 of an ordinary car: common practice, no source. */
const USUAL_RPM_PER_KMH = [125, 72, 48, 36, 29, 24];
/** Final drive over tyre circumference of an ordinary car, as engine speed for each km/h in a 1:1 gear. */
const USUAL_DIRECT_RPM_PER_KMH = 34;

/**
 * Gear of a pull: the logged one; else the gear whose engine speed for each km/h is nearest, from the
 * car's ratios, final drive and tyre; else from ratios and a usual final drive, or from usual gearing:
 * then it is a guess and called so.
 *
 * Source: kinematics; usual gearing is common practice, no source.
 */
export function findGear(data: PullData, options: LogOptions): GearFinding {
  const logged = median(data.channel('gear').values);
  if (Number.isFinite(logged) && logged >= 1 && logged <= 10) {
    return { gear: Math.round(logged), gearBasis: 'channel' };
  }
  const rpmPerKmh = gearingOf(
    data.engine,
    freshSamples(data.road.values.length > 1 ? data.road : data.undriven),
  );
  if (rpmPerKmh === null) return NO_GEAR;
  const known = gearingOfCar(options);
  return nearest(rpmPerKmh, known.gearing, known.gearBasis);
}

/** Engine speed for each km/h in each gear, as far as the car's data go. */
function gearingOfCar(options: LogOptions): {
  gearing: readonly number[];
  gearBasis: 'ratios' | 'usual-gearing';
} {
  const ratios = options.gearRatios ?? [];
  const { finalDriveRatio: final, tyreRollingCircumferenceM: tyreM } = options;
  if (ratios.length === 0) return { gearing: USUAL_RPM_PER_KMH, gearBasis: 'usual-gearing' };
  if (!final || !tyreM) {
    return { gearing: ratios.map((ratio) => ratio * USUAL_DIRECT_RPM_PER_KMH), gearBasis: 'usual-gearing' };
  }
  return { gearing: ratios.map((ratio) => (ratio * final * 1000) / 60 / tyreM), gearBasis: 'ratios' };
}

/** Engine speed for each km/h, by the lower quartile: wheel slip only raises it. null without road speed. */
export function gearingOf(engine: Series, road: Series): number | null {
  const quotients: number[] = [];
  road.timeS.forEach((timeS, index) => {
    const kmh = road.values[index] as number;
    const rpm = valueAt(engine, timeS);
    if (kmh >= LEAST_ROAD_KMH && rpm !== null && rpm > 0) quotients.push(rpm / kmh);
  });
  if (quotients.length < 3) return null;
  quotients.sort((a, b) => a - b);
  return quotients[Math.floor(quotients.length / 4)] ?? null;
}

function nearest(
  rpmPerKmh: number,
  gearing: readonly number[],
  gearBasis: 'ratios' | 'usual-gearing',
): GearFinding {
  const away = gearing.map((usual) => Math.abs(Math.log(rpmPerKmh / usual)));
  const best = away.indexOf(Math.min(...away));
  const tolerance = gearBasis === 'ratios' ? RATIO_TOLERANCE : 2 * RATIO_TOLERANCE;
  return (away[best] ?? Infinity) <= tolerance ? { gear: best + 1, gearBasis } : NO_GEAR;
}

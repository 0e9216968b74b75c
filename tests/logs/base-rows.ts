/** One moment of the drive that all files of the corpus tell of: cruise, one pull in third gear, coast. */
export interface BaseRow {
  readonly timeS: number;
  readonly boostKpa: number;
  readonly rpm: number;
  readonly kmh: number;
  readonly throttlePct: number;
  readonly intakeC: number;
}

export const AIR_KPA = 98.5;
/** Peak of the pull: a crest on a plateau of 130 kPa, through the documented filter. */
export const PEAK_KPA = 138;
export const START_S = 2;
export const END_S = 8;

const RPM_PER_KMH = 48;

export interface BaseShape {
  readonly rateHz?: number;
  readonly gearRpmPerKmh?: number;
  readonly endS?: number;
  /** Throttle at a moment of the pull, %. */
  readonly throttleAt?: (timeS: number) => number;
}

/** Rows of that drive, without noise. */
export function baseRows(shape: BaseShape = {}): BaseRow[] {
  const { rateHz = 20, gearRpmPerKmh = RPM_PER_KMH, endS = END_S, throttleAt = () => 100 } = shape;
  const count = Math.round((endS + 2) * rateHz);
  return Array.from({ length: count }, (_, row) => {
    const timeS = row / rateHz;
    const isPull = timeS >= START_S && timeS <= endS;
    const sinceS = timeS - START_S;
    const rpm = isPull ? 2200 + 650 * sinceS : timeS < START_S ? 2200 : 3000;
    return {
      timeS,
      boostKpa: isPull ? pullBoost(sinceS) : timeS < START_S ? -35 : -68,
      rpm,
      kmh: rpm / gearRpmPerKmh,
      throttlePct: isPull ? throttleAt(timeS) : timeS < START_S ? 12 : 0,
      intakeC: 31 + (isPull ? sinceS : 0),
    };
  });
}

function pullBoost(sinceS: number): number {
  const rise = sinceS < 1.5 ? -35 + 165 * Math.sin((Math.PI / 2) * (sinceS / 1.5)) : 130;
  const crest = sinceS < 1.5 ? 0 : Math.max(0, 8 * Math.sin(Math.PI * Math.min(1, (sinceS - 1.5) / 1.2)));
  return rise + crest;
}

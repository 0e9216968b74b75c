import { median } from '../filter/hampel-filter.js';
import { freshSamples, partOf, valueAt, type Series } from '../filter/series.js';
import { gearingOf } from './find-gear.js';
import type { PullData } from './pull-data.js';

const LEAST_ROAD_KMH = 15;
const LEAST_SAMPLES = 4;

/**
 * Largest wheel or clutch slip of a pull, % of road speed, by whatever the log can show: driven against
 * undriven wheels; engine against road speed; wheels that gain speed faster than tyres can push; engine
 * speed that falls back after a flare. null where the log has neither engine nor road speed.
 *
 * Source: kinematics; the limits are common practice, no source.
 */
export function measureSlip(data: PullData): number | null {
  const found = [wheelSlip(data), gearSlip(data), burstSlip(data.road), flareSlip(data.engine)];
  const known = found.filter((slip) => slip !== null);
  return known.length === 0 ? null : Math.max(...known);
}

/** Driven against undriven wheels, by their usual ratio outside pulls. */
function wheelSlip({ road, undriven, wheelRatio }: PullData): number | null {
  if (wheelRatio === null) return null;
  return lastingSlip(freshSamples(undriven), (timeS, kmh) => {
    const driven = valueAt(road, timeS);
    return driven === null ? null : driven / (kmh * wheelRatio);
  });
}

/** Engine speed against the speed over ground, by the lower quartile of their ratio in this pull. */
function gearSlip({ engine, road, undriven }: PullData): number | null {
  const ground = freshSamples(undriven.values.length > LEAST_SAMPLES ? undriven : road);
  const base = gearingOf(engine, ground);
  if (base === null) return null;
  return lastingSlip(ground, (timeS, kmh) => {
    const rpm = valueAt(engine, timeS);
    return rpm === null ? null : rpm / (kmh * base);
  });
}

/** Highest excess over 1 that three samples in a row reach, %. */
function lastingSlip(ground: Series, ratioAt: (timeS: number, kmh: number) => number | null): number {
  let worst = 0;
  let [older, before] = [0, 0];
  ground.timeS.forEach((timeS, index) => {
    const kmh = ground.values[index] as number;
    const ratio = kmh < LEAST_ROAD_KMH ? null : ratioAt(timeS, kmh);
    const slip = ratio === null ? 0 : 100 * (ratio - 1);
    worst = Math.max(worst, Math.min(slip, before, older));
    [older, before] = [before, slip];
  });
  return worst;
}

const BURST_S = 0.5;
/** Spinning wheels gain speed several times faster than the car does in the rest of the pull. */
const BURST_MULTIPLE = 2.2;
const LEAST_BURST_MPS2 = 3;
const KMH_PER_MPS = 3.6;

interface SpeedGain {
  readonly kmh: number;
  readonly spanS: number;
  readonly gainKmh: number;
}

/** Wheels that gain speed far faster than in the rest of the pull are spinning: their gain beyond the usual. */
function burstSlip(road: Series): number | null {
  const gains = gainsOf(freshSamples(road));
  if (gains.length < LEAST_SAMPLES) return null;
  const usual = median(Float64Array.from(gains, ({ gainKmh, spanS }) => gainKmh / spanS));
  const least = Math.max(BURST_MULTIPLE * usual, LEAST_BURST_MPS2 * KMH_PER_MPS);
  const slips = gains.map(({ kmh, spanS, gainKmh }) =>
    gainKmh / spanS < least ? 0 : (100 * (gainKmh - usual * spanS)) / kmh,
  );
  return slips.reduce((worst, slip) => Math.max(worst, slip), 0);
}

/** How much road speed grows within a moment after each fresh sample. */
function gainsOf(fresh: Series): SpeedGain[] {
  const gains: SpeedGain[] = [];
  fresh.timeS.forEach((timeS, index) => {
    const kmh = fresh.values[index] as number;
    const later = partOf(fresh, timeS, timeS + BURST_S);
    const spanS = (later.timeS.at(-1) ?? timeS) - timeS;
    if (spanS < BURST_S / 2 || kmh < LEAST_ROAD_KMH) return;
    gains.push({ kmh, spanS, gainKmh: (later.values.at(-1) ?? kmh) - kmh });
  });
  return gains;
}

const FLARE_S = 1;

/** Fall of engine speed from a local top at full load, % of the top; a rise after it must show. */
function flareSlip(engine: Series): number | null {
  const { timeS, values } = calmed(engine);
  if (values.length < LEAST_SAMPLES) return null;
  let worst = 0;
  for (let top = 1; top + 1 < values.length; top += 1) {
    const height = values[top] as number;
    if (height < (values[top - 1] as number) || height <= (values[top + 1] as number)) continue;
    const after = partOf({ timeS, values }, timeS[top] as number, (timeS[top] as number) + FLARE_S).values;
    const lowest = after.reduce((least, rpm) => Math.min(least, rpm), height);
    const isFollowedByRise = (after.at(-1) ?? lowest) > lowest;
    if (isFollowedByRise) worst = Math.max(worst, (100 * (height - lowest)) / height);
  }
  return worst;
}

/** Median of three: a single wild sample is no flare. */
function calmed({ timeS, values }: Series): Series {
  const calm = values.map((value, index) => {
    const around = values.subarray(Math.max(index - 1, 0), index + 2);
    return around.length < 3 ? value : median(Float64Array.from(around));
  });
  return { timeS, values: calm };
}

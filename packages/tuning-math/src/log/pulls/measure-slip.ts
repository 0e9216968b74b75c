import { valueAt } from '../filter/series.js';
import { gearingOf } from './find-gear.js';
import type { PullData } from './pull-data.js';

const FLARE_WINDOW_S = 1;
const LASTING_S = 0.1;

/**
 * Largest wheel or clutch slip of a pull, % of road speed: how far engine speed runs ahead of the speed
 * over ground in this gear; without one, how far engine speed falls back after a flare, which is what
 * slip looks like when the logged speed is that of the slipping wheels. null without engine speed.
 *
 * Source: kinematics; the flare is common practice, no source.
 */
export function measureSlip(data: PullData): number | null {
  if (data.engine.values.length < 4) return null;
  const ground = data.undriven.values.length > 3 ? data.undriven : data.road;
  const byRatio = ratioSlip(data, ground);
  return Math.max(byRatio ?? 0, flareOf(data));
}

function ratioSlip(data: PullData, ground: PullData['road']): number | null {
  const base = gearingOf(data.engine, ground);
  if (base === null) return null;
  let worst = 0;
  let [before, since] = [0, NaN];
  ground.timeS.forEach((timeS, index) => {
    const rpm = valueAt(data.engine, timeS);
    const kmh = ground.values[index] as number;
    if (rpm === null || kmh < 15) return;
    const slip = 100 * (rpm / (kmh * base) - 1);
    if (slip > 0 && before > 0 && timeS - since < LASTING_S * 5)
      worst = Math.max(worst, Math.min(slip, before));
    before = slip;
    since = timeS;
  });
  return worst;
}

/** Fall of engine speed from a local top at full load, % of the top. */
function flareOf({ engine }: PullData): number {
  let worst = 0;
  for (let index = 1; index + 1 < engine.values.length; index += 1) {
    const top = engine.values[index] as number;
    if (top < (engine.values[index - 1] as number) || top <= (engine.values[index + 1] as number)) continue;
    worst = Math.max(worst, (100 * (top - lowestAfter(engine, index))) / top);
  }
  return worst;
}

/** Lowest engine speed within a moment that is followed by a further rise past the middle of the fall. */
function lowestAfter({ timeS, values }: PullData['engine'], top: number): number {
  let lowest = values[top] as number;
  let settledLowest = lowest;
  for (
    let index = top + 1;
    index < values.length && (timeS[index] as number) - (timeS[top] as number) <= FLARE_WINDOW_S;
    index += 1
  ) {
    const value = values[index] as number;
    if (value < lowest) lowest = value;
    else if (value > lowest) settledLowest = lowest;
  }
  return settledLowest;
}

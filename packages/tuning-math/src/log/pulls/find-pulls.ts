import { cutSeries, type Series } from '../filter/series.js';
import type { LogSamples } from '../log-samples.js';
import type { PullSettings } from '../pull-settings.js';
import { findFullLoad, type FullLoad, type LoadStretch } from './find-full-load.js';

/** Where a pull stands in the log. */
export interface PullSpan {
  readonly startS: number;
  readonly endS: number;
  readonly basis: FullLoad['basis'];
}

/**
 * Pulls of a log: stretches of full load in which engine speed rises and boost passes the least that
 * counts, parted at changes of gear. Stretches that fail later checks stay in: they are judged, not hidden.
 *
 * Cost: O(n). Source: common practice, no source.
 */
export function findPulls(samples: LogSamples, settings: PullSettings): PullSpan[] {
  const { stretches, basis } = findFullLoad(samples, settings);
  return stretches
    .flatMap((stretch) => partAtShifts(samples, stretch, settings))
    .map((stretch) => (basis === 'boost' ? growToOnset(samples, stretch) : stretch))
    .filter((stretch) => isPull(samples, stretch, settings))
    .map(({ startS, endS }) => ({ startS, endS, basis }));
}

function speedOf(samples: LogSamples, { startS, endS }: LoadStretch): Series {
  return cutSeries(samples.timeS, samples.columns.get('engine-speed'), startS, endS);
}

function partAtShifts(samples: LogSamples, stretch: LoadStretch, settings: PullSettings): LoadStretch[] {
  const speed = speedOf(samples, stretch);
  const parts: LoadStretch[] = [];
  let startS = stretch.startS;
  for (let index = 1; index < speed.values.length; index += 1) {
    const bottom = shiftBottom(speed, index, settings);
    if (bottom === null) continue;
    parts.push({ ...stretch, startS, endS: speed.timeS[index] as number });
    startS = speed.timeS[bottom] as number;
    index = bottom;
  }
  return [...parts, { ...stretch, startS }];
}

/** Index of the lowest speed after a shift that begins at `index`; a smaller or slower fall is wheel slip, and null. */
function shiftBottom({ timeS, values }: Series, index: number, settings: PullSettings): number | null {
  const top = values[index] as number;
  if ((values[index + 1] ?? Infinity) >= top) return null;
  let lowest = index;
  for (
    let next = index + 1;
    next < values.length && (timeS[next] as number) - (timeS[index] as number) <= settings.shiftS;
    next += 1
  ) {
    if ((values[next] as number) < (values[lowest] as number)) lowest = next;
  }
  return (values[lowest] as number) < (1 - settings.shiftDropPct / 100) * top ? lowest : null;
}

const GROW_S = 6;
const FOOT_SHARE = 0.1;

/** Without a throttle the start is where boost leaves its foot before the rise, the end where it has fallen. */
function growToOnset(samples: LogSamples, stretch: LoadStretch): LoadStretch {
  const boost = cutSeries(
    samples.timeS,
    samples.columns.get('boost-pressure'),
    stretch.startS - GROW_S,
    stretch.startS,
  );
  const level = boost.values.at(-1) ?? 0;
  let index = boost.values.length - 1;
  while (index > 0 && (boost.values[index] as number) > FOOT_SHARE * level) index -= 1;
  return { ...stretch, startS: boost.timeS[Math.max(index, 0)] ?? stretch.startS };
}

function isPull(samples: LogSamples, stretch: LoadStretch, settings: PullSettings): boolean {
  if (stretch.endS - stretch.startS < settings.leastStretchS) return false;
  const boost = cutSeries(samples.timeS, samples.columns.get('boost-pressure'), stretch.startS, stretch.endS);
  if (lastingHighest(boost.values) < settings.leastBoostKpa) return false;
  const speed = speedOf(samples, stretch);
  if (speed.values.length < 2) return true;
  return lastingHighest(speed.values) - (speed.values[0] as number) >= settings.leastRiseRpm;
}

/** Highest value that two samples in a row reach. */
function lastingHighest(values: Float64Array): number {
  let highest = -Infinity;
  for (let index = 1; index < values.length; index += 1) {
    highest = Math.max(highest, Math.min(values[index - 1] as number, values[index] as number));
  }
  return highest;
}

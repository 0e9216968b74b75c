import type { ChannelQuantity } from '../channel-quantities.js';
import { cleanBoost } from '../filter/clean-boost.js';
import { cutSeries, firstIndexFrom, valueAt } from '../filter/series.js';
import { LogError } from '../log-error.js';
import type { LogSamples } from '../log-samples.js';
import { DEFAULT_PULL_SETTINGS, type PullSettings } from '../pull-settings.js';
import type { PullTrace } from '../pull-trace.js';
import { thinRows } from './thin-rows.js';

/** Which stretch of a log, and how finely. */
export interface TraceOptions {
  readonly fromS: number;
  readonly toS: number;
  /** At most about so many points; 600 when left out. */
  readonly points?: number;
  readonly settings?: PullSettings;
}

const DEFAULT_POINTS = 600;
const LONGEST_FILTERED_S = 120;

/**
 * A stretch of a log for a chart, thinned so that in every part both the lowest and the highest boost
 * stay. The filtered boost is left out of stretches above two minutes, where it could not be seen.
 *
 * @throws LogError `setting-out-of-range` for fewer than 8 points or a stretch that ends before it starts
 * Cost: O(rows in the stretch), times the filter's window for the filtered boost.
 */
export function traceOfLog(samples: LogSamples, options: TraceOptions): PullTrace {
  const { fromS, toS, points = DEFAULT_POINTS } = options;
  if (!(toS >= fromS) || !(points >= 8)) {
    throw new LogError(
      'setting-out-of-range',
      'a trace needs a start before its end and at least 8 points',
      `got ${fromS} to ${toS} s, ${points} points`,
    );
  }
  const first = firstIndexFrom(samples.timeS, fromS);
  const last = firstIndexFrom(samples.timeS, toS + 1e-9);
  const rows = thinRows(samples.columns.get('boost-pressure') ?? new Float32Array(0), first, last, points);
  const pick = (quantity: ChannelQuantity): (number | null)[] => {
    const column = samples.columns.get(quantity);
    return column === undefined ? [] : rows.map((row) => finiteOrNull(column[row]));
  };
  return {
    timeS: rows.map((row) => samples.timeS[row] as number),
    boostKpa: pick('boost-pressure'),
    filteredKpa: toS - fromS > LONGEST_FILTERED_S ? [] : filteredAt(samples, options, rows),
    engineSpeedRpm: pick('engine-speed'),
    throttlePct: pick(samples.columns.has('throttle') ? 'throttle' : 'pedal'),
    speedKmh: pick(samples.columns.has('vehicle-speed') ? 'vehicle-speed' : 'undriven-wheel-speed'),
    dutyPct: pick('solenoid-duty'),
    intakeC: pick('intake-temperature'),
    lambda: pick('lambda'),
  };
}

function filteredAt(
  samples: LogSamples,
  { fromS, toS, settings = DEFAULT_PULL_SETTINGS }: TraceOptions,
  rows: readonly number[],
): (number | null)[] {
  const raw = cutSeries(samples.timeS, samples.columns.get('boost-pressure'), fromS, toS);
  if (raw.values.length === 0) return rows.map(() => null);
  const { smooth } = cleanBoost(raw, settings);
  return rows.map((row) => finiteOrNull(valueAt(smooth, samples.timeS[row] as number) ?? undefined));
}

const KEPT_DIGITS = 6;

function finiteOrNull(value: number | undefined): number | null {
  return value === undefined || Number.isNaN(value) ? null : Number(value.toPrecision(KEPT_DIGITS));
}

import { partOf } from '../filter/series.js';
import type { LogPull } from '../log-analysis.js';
import type { LogNotice } from '../log-notice.js';
import type { PullSettings } from '../pull-settings.js';
import type { PullData } from './pull-data.js';

/** What the other channels of a pull say. */
export interface PullMarkers {
  readonly figures: Pick<LogPull, 'intakeC' | 'intakeEndC' | 'knockSeen' | 'leanestLambda'>;
  readonly notes: readonly LogNotice[];
}

/** Gas takes this long to reach the sensor and the sensor to follow. */
const MIXTURE_DELAY_S = 1;
const EDGE_SHARE = 0.1;

/**
 * Intake temperature at start and end, knock and lean markers. Knock: retard by the setting or more either
 * way, or a knock count that rises. Lean: lambda above the setting in two samples in a row.
 *
 * Source: common practice, no source.
 */
export function readMarkers(data: PullData, settings: PullSettings): PullMarkers {
  const intake = data.channel('intake-temperature').values;
  const edge = Math.max(1, Math.round(EDGE_SHARE * intake.length));
  const knockSeen = knockOf(data, settings.knockRetardDeg);
  const lambda = data.channel('lambda');
  const leanestLambda = lastingHighest(
    partOf(lambda, data.span.startS + MIXTURE_DELAY_S, data.span.endS).values,
  );
  const notes: LogNotice[] = [];
  if (knockSeen === true)
    notes.push({ code: 'knock', text: 'knock was logged during the pull: find out why before the next one' });
  if (leanestLambda !== null && leanestLambda > settings.leanLambda) {
    notes.push({
      code: 'lean',
      text: `lambda reaches ${leanestLambda.toFixed(2)} under full load: check the mixture before the next pull`,
    });
  }
  return {
    figures: {
      intakeC: mean(intake.subarray(0, edge)),
      intakeEndC: mean(intake.subarray(intake.length - edge)),
      knockSeen,
      leanestLambda,
    },
    notes,
  };
}

function knockOf(data: PullData, leastDeg: number): boolean | null {
  const retard = data.channel('knock-retard').values;
  const count = data.channel('knock-count').values;
  if (retard.length === 0 && count.length === 0) return null;
  const isRetarded = retard.some((value) => Math.abs(value) >= leastDeg);
  const isCounted = count.length > 1 && (count.at(-1) ?? 0) > (count[0] ?? 0);
  return isRetarded || isCounted;
}

function mean(values: Float64Array): number | null {
  if (values.length === 0) return null;
  return Math.round((100 * values.reduce((sum, value) => sum + value, 0)) / values.length) / 100;
}

function lastingHighest(values: Float64Array): number | null {
  let highest: number | null = null;
  for (let index = 1; index < values.length; index += 1) {
    const lasting = Math.min(values[index - 1] as number, values[index] as number);
    if (highest === null || lasting > highest) highest = lasting;
  }
  return highest;
}

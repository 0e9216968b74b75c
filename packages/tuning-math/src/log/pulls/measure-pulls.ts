import type { LogPull } from '../log-analysis.js';
import type { LogOptions } from '../log-options.js';
import type { LogSamples } from '../log-samples.js';
import type { PullSettings } from '../pull-settings.js';
import { SAME_KPA } from './find-flat-top.js';
import type { PullSpan } from './find-pulls.js';
import { measurePull } from './measure-pull.js';

/**
 * Measures and judges the pulls of one log. A sensor ends at the same reading in all of them: what one pull shows to
 * be its full scale is the full scale of every other pull that tops out at just that reading.
 *
 * @param spans where the pulls stand, in the order of time
 */
export function measurePulls(
  samples: LogSamples,
  spans: readonly PullSpan[],
  options: LogOptions,
  settings: PullSettings,
): LogPull[] {
  const measured = spans.flatMap((span) => {
    const pull = measurePull(samples, span, options, settings);
    return pull === null ? [] : [{ span, pull }];
  });
  const ends = measured.flatMap(({ pull }) => (isAtFullScale(pull) ? [pull.rawPeakKpa ?? NaN] : []));
  return measured.map(({ span, pull }) => {
    const endKpa = ends.find((end) => Math.abs(end - (pull.rawPeakKpa ?? NaN)) <= SAME_KPA);
    if (isAtFullScale(pull) || endKpa === undefined) return pull;
    return measurePull(samples, span, { ...options, sensorFullScaleKpa: endKpa }, settings) ?? pull;
  });
}

function isAtFullScale({ reasons }: LogPull): boolean {
  return reasons.some(({ code }) => code === 'sensor-full-scale');
}

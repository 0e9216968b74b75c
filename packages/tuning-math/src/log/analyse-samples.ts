import type { LogAnalysis } from './log-analysis.js';
import type { LogNotice } from './log-notice.js';
import { LogError } from './log-error.js';
import type { LogOptions } from './log-options.js';
import type { LogSamples } from './log-samples.js';
import { completeSettings } from './complete-settings.js';
import type { PullSettings } from './pull-settings.js';
import { findPulls } from './pulls/find-pulls.js';
import { measurePulls } from './pulls/measure-pulls.js';

/** Changes with every change of a formula or threshold in this folder; recorded with each result. */
export const LOG_CODE_VERSION = 'log-4';

/**
 * Finds, measures and judges the pulls of a log that has been read. The same samples, options and
 * settings give the same result to the last digit.
 *
 * @param samples from a log reader
 * @param options target, air pressure, gearing and settings, as far as known
 * @throws LogError `setting-out-of-range` naming a setting or option that makes no sense
 * Cost: O(samples).
 */
export function analyseSamples(samples: LogSamples, options: LogOptions = {}): LogAnalysis {
  const settings = settingsOf(options);
  const pulls = measurePulls(samples, findPulls(samples, settings), options, settings);
  const { timeS } = samples;
  return {
    channels: samples.channels,
    layout: samples.layout,
    shape: samples.shape,
    sampleRateHz: samples.sampleRateHz,
    timeOriginS: samples.timeOriginS,
    rowCount: samples.rowCount,
    durationS: timeS.length === 0 ? 0 : (timeS.at(-1) as number) - (timeS[0] as number),
    pulls,
    warnings: [...samples.warnings, ...missingChannels(samples), ...(pulls.length === 0 ? [NO_PULL] : [])],
    provenance: { codeVersion: LOG_CODE_VERSION, settings },
  };
}

const NO_PULL: LogNotice = {
  code: 'no-pull',
  text: 'no pull was found: no stretch of full load with rising engine speed and boost',
};

function settingsOf(options: LogOptions): PullSettings {
  const settings = completeSettings(options.settings);
  const target = options.targetKpa ?? 1;
  if (!(target > 0 && target < 1000)) {
    throw new LogError(
      'setting-out-of-range',
      `a target of ${target} kPa cannot be`,
      'give targetKpa above 0, in kPa gauge',
    );
  }
  return settings;
}

function missingChannels(samples: LogSamples): LogNotice[] {
  const notices: LogNotice[] = [];
  if (!samples.columns.has('engine-speed')) {
    notices.push({
      code: 'no-engine-speed',
      text: 'no engine speed: gear, onset speed and slip cannot be told',
    });
  }
  if (!samples.columns.has('throttle') && !samples.columns.has('pedal')) {
    notices.push({
      code: 'no-throttle',
      text: 'no throttle or pedal: full load is told from boost, starts and ends are less sure',
    });
  }
  return notices;
}

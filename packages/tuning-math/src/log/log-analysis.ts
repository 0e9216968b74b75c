import type { LogNotice } from './log-notice.js';
import type { LogChannel, LogLayout } from './log-samples.js';
import type { LogShape } from './reading/log-shape.js';
import type { PullSettings } from './pull-settings.js';

/** Standard uncertainty (one sigma, JCGM 100) of each figure, in the figure's unit; null where the figure is null. */
export interface PullUncertainty {
  readonly peakKpa: number | null;
  readonly settledKpa: number | null;
  readonly overshootPct: number | null;
  readonly riseTimeS: number | null;
  readonly onsetRpm: number | null;
}

/** Oscillation about the settled boost. */
export interface Hunting {
  readonly frequencyHz: number;
  readonly dampingRatio: number | null;
  /** Half the distance from crest to trough of the first swing that counts. */
  readonly amplitudeKpa: number;
}

/** One pull of a log, measured and judged. A figure that cannot be measured is null and a reason says why. */
export interface LogPull {
  readonly startS: number;
  readonly endS: number;
  readonly startRpm: number | null;
  readonly endRpm: number | null;
  readonly gear: number | null;
  /** Where the gear comes from: the log's own column, the car's ratios, or a guess from usual gearing. */
  readonly gearBasis: 'channel' | 'ratios' | 'usual-gearing' | null;
  /** Highest boost after the documented filter, and its time. */
  readonly peakKpa: number | null;
  readonly peakTimeS: number | null;
  readonly peakRpm: number | null;
  /** Highest sample before the filter. */
  readonly rawPeakKpa: number | null;
  readonly settledKpa: number | null;
  readonly overshootPct: number | null;
  readonly riseTimeS: number | null;
  readonly onsetRpm: number | null;
  /** What the 90 % of the onset speed refer to. */
  readonly onsetBasis: 'target' | 'settled' | null;
  /** Loss of boost towards the end, kPa for each 1000 r/min. */
  readonly taperKpaPer1000Rpm: number | null;
  readonly hunting: Hunting | null;
  /** Lowest throttle inside the pull, % of full. */
  readonly lowestThrottlePct: number | null;
  /** Largest wheel slip, % of road speed. */
  readonly slipPct: number | null;
  /** Gradient of the road, %, where speed or altitude allow it. */
  readonly gradientPct: number | null;
  /** Intake temperature as the pull starts and as it ends. */
  readonly intakeC: number | null;
  readonly intakeEndC: number | null;
  readonly knockSeen: boolean | null;
  readonly leanestLambda: number | null;
  /** Samples a second of the boost channel in this pull, repeated samples not counted. */
  readonly boostRateHz: number | null;
  readonly uncertainty: PullUncertainty;
  readonly usable: boolean;
  readonly reasons: readonly LogNotice[];
}

/** What made the result, so that it can be computed again to the last digit. */
export interface LogProvenance {
  readonly codeVersion: string;
  readonly settings: PullSettings;
}

/** Everything that was found in a log. Plain data: survives JSON unchanged. */
export interface LogAnalysis {
  readonly channels: readonly LogChannel[];
  readonly layout: LogLayout;
  readonly shape: LogShape;
  readonly sampleRateHz: number | null;
  /** Added to every time here it gives the time as logged: 0, or the clock or date of the first row. */
  readonly timeOriginS: number;
  readonly rowCount: number;
  readonly durationS: number;
  readonly pulls: readonly LogPull[];
  readonly warnings: readonly LogNotice[];
  readonly provenance: LogProvenance;
}

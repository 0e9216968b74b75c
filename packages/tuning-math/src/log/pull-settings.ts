/** Thresholds and filter of the analysis. A workshop may change them; they are recorded with each result. */
export interface PullSettings {
  /** Share of full throttle from which the engine counts as fully loaded, %. */
  readonly fullThrottlePct: number;
  /** A shorter lift inside a pull makes it 'lifted'; a longer one ends it, s. */
  readonly liftS: number;
  /** Speed range that a usable pull covers at least, r/min. */
  readonly leastSpanRpm: number;
  readonly leastDurationS: number;
  /** A stretch of full load that is shorter, or in which engine speed rises by less, is no pull at all. */
  readonly leastStretchS: number;
  readonly leastRiseRpm: number;
  /** A fall of engine speed by so much of it, %, within so many seconds, is a change of gear. */
  readonly shiftDropPct: number;
  readonly shiftS: number;
  /** Boost that a stretch of full load must reach to count as a pull, kPa gauge. */
  readonly leastBoostKpa: number;
  /** Gears that a pull is trusted in. */
  readonly trustedGears: readonly number[];
  /** Hampel identifier: half window, s, and how many scaled MADs make a spike. */
  readonly hampelHalfWindowS: number;
  readonly hampelThreshold: number;
  /** Local quadratic smoothing (Savitzky-Golay on an even grid): whole window, s, and fewest samples in it. */
  readonly smoothWindowS: number;
  readonly smoothLeastSamples: number;
  /** Boost counts as settled within this share of the settled mean, %. */
  readonly settledBandPct: number;
  /** Settled boost is a mean over at most so long, s. */
  readonly settledWindowS: number;
  /** Rise time runs from one share of settled boost to the other, %. */
  readonly riseLowPct: number;
  readonly riseHighPct: number;
  /** Onset speed is where this share of the target is first reached, %. */
  readonly onsetPct: number;
  /** Samples that the rise from 10 % to 90 % must hold for its peak to be trusted. */
  readonly leastRiseSamples: number;
  /** Samples of boost a second below which no peak is trusted, Hz. */
  readonly leastBoostRateHz: number;
  /** Wheel slip from which a pull counts as slipped, %. */
  readonly slipPct: number;
  /** Lambda above which full load counts as lean. */
  readonly leanLambda: number;
  /** Ignition retard from which knock is reported, degrees. */
  readonly knockRetardDeg: number;
}

/** Settings that a new workshop starts with: common practice, no source, except the filter (see docs/logs.md). */
export const DEFAULT_PULL_SETTINGS: PullSettings = {
  fullThrottlePct: 90,
  liftS: 0.8,
  leastSpanRpm: 1500,
  leastDurationS: 1.5,
  leastStretchS: 0.4,
  leastRiseRpm: 150,
  shiftDropPct: 16,
  shiftS: 0.8,
  leastBoostKpa: 20,
  trustedGears: [3, 4],
  hampelHalfWindowS: 0.08,
  hampelThreshold: 4,
  smoothWindowS: 0.25,
  smoothLeastSamples: 5,
  settledBandPct: 2,
  settledWindowS: 1,
  riseLowPct: 10,
  riseHighPct: 90,
  onsetPct: 90,
  leastRiseSamples: 4,
  leastBoostRateHz: 4,
  slipPct: 5,
  leanLambda: 0.95,
  knockRetardDeg: 1,
};

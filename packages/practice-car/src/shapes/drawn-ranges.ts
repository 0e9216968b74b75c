/** Least and most of a figure that is drawn evenly. */
export type DrawnRange = readonly [low: number, high: number];

/**
 * What shape cars are drawn from, each evenly and by itself. Ranges are reasoned: springs of 35 to 90 kPa, a scatter
 * that good and bad days on one road have; common practice, no source.
 */
export const DRAWN_RANGES = {
  baseKpa: [35, 90],
  /** Pull-to-pull scatter: standard deviation over mean. */
  scatterRatio: [0.005, 0.025],
  soakShiftRatio: [-0.03, 0.02],
  /** Pulls until two thirds of the shift. */
  soakPulls: [3, 10],
  falsePullShare: [0, 0.04],
  /** A false pull reads low by this share of its mean: a lifted throttle, a slipping wheel, a short run. */
  falseLossRatio: [0.05, 0.18],
} as const satisfies Readonly<Record<string, DrawnRange>>;

/** Standard deviation of a measured base boost over the true one. */
export const BASE_READING_SPREAD = 0.03;

/** Targets that the trade asks for: from and to this many times the base boost. */
export const TARGET_GAINS: DrawnRange = [1.15, 3.2];
/** The target is the mean at a duty drawn evenly, so far from the ends of the controller's range. */
export const TARGET_ABOVE_MIN = 12;
export const TARGET_BELOW_MAX = 6;
/** At zero duty a car makes less than this share of its target. */
export const STARTS_BELOW = 0.96;

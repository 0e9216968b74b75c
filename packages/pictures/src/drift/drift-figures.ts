/** One pull on a drift chart. */
export interface DriftMark {
  readonly visitNumber: number;
  readonly number: number;
  /** Peak at reference conditions, kPa gauge. */
  readonly kpa: number;
}

/** A pull since the baseline, with what both charts plot of it. */
export interface DriftSince extends DriftMark {
  /** Limits of a single pull. */
  readonly lowKpa: number;
  readonly highKpa: number;
  readonly isOut: boolean;
  /** The moving average after this pull, and its limits. */
  readonly averageKpa: number;
  readonly averageLowKpa: number;
  readonly averageHighKpa: number;
  readonly isAverageOut: boolean;
}

/** All that a drift chart shows, in order of time. */
export interface DriftFigures {
  readonly baseline: readonly DriftMark[];
  readonly since: readonly DriftSince[];
  /** Mean of the baseline. */
  readonly centreKpa: number;
  readonly targetKpa: number | null;
  readonly toleranceKpa: number;
  readonly ceilingKpa: number | null;
  /** Position in `since` at which a rule fired first; null while none did. */
  readonly firedAt: number | null;
}

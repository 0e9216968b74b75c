/**
 * A pull or a stretch of a log for a chart: equally long lists, thinned so that the extremes of the boost
 * stay. null where a channel has no sample; an empty list where the log has no such channel.
 */
export interface PullTrace {
  readonly timeS: readonly number[];
  readonly boostKpa: readonly (number | null)[];
  /** Boost after the documented filter. */
  readonly filteredKpa: readonly (number | null)[];
  readonly engineSpeedRpm: readonly (number | null)[];
  readonly throttlePct: readonly (number | null)[];
  readonly speedKmh: readonly (number | null)[];
  readonly dutyPct: readonly (number | null)[];
  readonly intakeC: readonly (number | null)[];
  readonly lambda: readonly (number | null)[];
}

/** Mixture of normals in log peak over target: one part for each explanation. */
export interface PeakMixture {
  readonly weights: Float64Array;
  readonly centres: Float64Array;
  /** Where in the two tables below the spreads of each part stand. */
  readonly places: Int32Array;
  /** Standard deviation of the car's own mean at this duty, as hot as it is now. */
  readonly meanSpreads: Float64Array;
  /** Standard deviation of the next reading: the mean's and the scatter. */
  readonly peakSpreads: Float64Array;
}

/** Standard deviations at a duty: for each scatter with no pull false (first) and with each pull false (the others). */
export type PeakSpreads = Pick<PeakMixture, 'meanSpreads' | 'peakSpreads'>;

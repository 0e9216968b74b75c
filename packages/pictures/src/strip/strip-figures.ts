/** One pull on a strip. */
export interface StripPull {
  /** Running number, as in the list of pulls. */
  readonly number: number;
  /** Recorded peak, kPa gauge. */
  readonly peakKpa: number;
  /** Void, or not usable: drawn hollow. */
  readonly isVoid: boolean;
}

/** All that a peak strip shows, kPa gauge; the same shape as `StripFigures` of the contracts. */
export interface StripFigures {
  readonly baseKpa: number | null;
  readonly targetKpa: number | null;
  /** Accepted distance from the target, >= 0. */
  readonly toleranceKpa: number;
  readonly ceilingKpa: number | null;
  readonly pulls: readonly StripPull[];
  /** Range that the peak of the next pull is expected in; `lowKpa` <= `highKpa`. */
  readonly next: { readonly lowKpa: number; readonly highKpa: number } | null;
}

/**
 * How large a strip is drawn: `small` on a board card (px), `medium` on a visit or a report page (px), `paper` on
 * a PDF (pt). The height follows from the form alone, never from the figures, so that nothing jumps.
 */
export interface StripSize {
  readonly form: 'small' | 'medium' | 'paper';
  /** At least 120. */
  readonly width: number;
}

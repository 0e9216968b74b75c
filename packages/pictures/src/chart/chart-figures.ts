/** One pull on a response chart. */
export interface ChartPull {
  readonly number: number;
  readonly dutyPct: number;
  /** Recorded peak, kPa gauge. */
  readonly peakKpa: number;
  /** Void, or not usable: drawn hollow. */
  readonly isVoid: boolean;
}

/** One point of the predicted response; the same shape as `curve` of the duty advice. */
export interface ChartCurvePoint {
  readonly duty: number;
  readonly medianKpa: number;
  readonly lowKpa: number;
  readonly highKpa: number;
}

/** All that a response chart shows: duty in %, pressures in kPa gauge. */
export interface ChartFigures {
  /** What the controller can be set to. */
  readonly dutyRange: { readonly min: number; readonly max: number };
  readonly baseKpa: number | null;
  readonly targetKpa: number | null;
  /** Accepted distance from the target, >= 0. */
  readonly toleranceKpa: number;
  readonly ceilingKpa: number | null;
  readonly pulls: readonly ChartPull[];
  /** Duty rising; empty where there is no advice yet. */
  readonly curve: readonly ChartCurvePoint[];
  /** Whether the curve is foretold, as it is unless said otherwise, or the truth about a car that is simulated. */
  readonly curveIs?: 'predicted' | 'true';
  readonly next: { readonly dutyPct: number; readonly lowKpa: number; readonly highKpa: number } | null;
}

/** `screen` in px, `paper` in pt; at least 240 wide and 180 high. */
export interface ChartSize {
  readonly form: 'screen' | 'paper';
  readonly width: number;
  readonly height: number;
}

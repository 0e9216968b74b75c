/** What moves a peak besides the settings. */
export type Condition = 'gear' | 'gradient' | 'intake' | 'barometer' | 'heatSoak';

/** Conditions of a pull or a forecast; null where not known. */
export interface PullConditions {
  /** Gear driven in, 1 to 10. */
  readonly gear: number | null;
  /** Uphill positive, %. */
  readonly gradientPct: number | null;
  /** Air into the compressor, °C. */
  readonly intakeC: number | null;
  /** Barometer at the place, absolute kPa. */
  readonly barometerAbsKpa: number | null;
  /** How much warmer the charge air is than at the first pull, K. */
  readonly heatSoakC: number | null;
}

/** Conditions that are all known. */
export type KnownConditions = { readonly [Field in keyof PullConditions]: number };

/** A usable pull at unchanged settings, with its conditions. */
export interface ConditionedPull {
  /** Recorded peak, kPa gauge, above 0. */
  readonly peakKpa: number;
  readonly conditions: PullConditions;
}

/** `unknown`: the data do not tell; `none-seen`: they tell of no effect worth naming; `seen`: they do. */
export type EffectStatus = 'unknown' | 'none-seen' | 'seen';

/** How one condition moves the peak. */
export interface ConditionEffect {
  readonly condition: Condition;
  readonly status: EffectStatus;
  /** % of peak for each `unit` more. */
  readonly effectPct: number;
  /** Standard uncertainty of it, %. */
  readonly uncertaintyPct: number;
  /** What one unit is, in plain words: 'gear', '10 K'. */
  readonly unit: string;
}

/** Belief at one pull-to-pull scatter; the whole belief is a weighted set of these. */
export interface ScatterBelief {
  readonly weight: number;
  /** % of the scale. */
  readonly scatterPct: number;
  /** Peak at reference, then the effects in the order of `CONDITIONS`, % of the scale. */
  readonly mean: readonly number[];
  readonly covariance: readonly (readonly number[])[];
}

/** The fitted model of a preset's peaks. */
export interface ConditionsModel {
  readonly reference: KnownConditions;
  /** Peak that 100 % stands for, kPa. */
  readonly scaleKpa: number;
  readonly pullCount: number;
  readonly effects: readonly ConditionEffect[];
  readonly beliefs: readonly ScatterBelief[];
  /** Range of each condition in the data; null where no pull has it. */
  readonly ranges: Readonly<Record<Condition, readonly [number, number] | null>>;
}

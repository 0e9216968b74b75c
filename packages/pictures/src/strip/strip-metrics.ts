import type { StripSize } from './strip-figures.js';

/** Measures of one form of the strip, in px or pt. */
export interface StripMetrics {
  readonly markRadius: number;
  readonly markTextSize: number;
  readonly labelTextSize: number;
  /** 0: no figures along the scale. */
  readonly tickTextSize: number;
  /** How many marks can stand above one another. */
  readonly laneCount: number;
  /** From lane to lane. */
  readonly lanePitch: number;
  /** Height of the row of labels. */
  readonly labelRow: number;
  /** From the wire down to the lower end of band and wall. */
  readonly foot: number;
  /** Height of the row of figures along the scale. */
  readonly tickRow: number;
  /** Blank left and right of the scale. */
  readonly inset: number;
  readonly isNumbered: boolean;
}

const METRICS: Readonly<Record<StripSize['form'], StripMetrics>> = {
  small: {
    markRadius: 6.5,
    markTextSize: 10.5,
    labelTextSize: 12,
    tickTextSize: 0,
    laneCount: 2,
    lanePitch: 13.5,
    labelRow: 16,
    foot: 10,
    tickRow: 0,
    inset: 4,
    isNumbered: false,
  },
  medium: {
    markRadius: 11,
    markTextSize: 13,
    labelTextSize: 14,
    tickTextSize: 12,
    laneCount: 3,
    lanePitch: 23,
    labelRow: 22,
    foot: 16,
    tickRow: 18,
    inset: 8,
    isNumbered: true,
  },
  paper: {
    markRadius: 7.5,
    markTextSize: 8.5,
    labelTextSize: 9,
    tickTextSize: 7.5,
    laneCount: 3,
    lanePitch: 15.6,
    labelRow: 14,
    foot: 11,
    tickRow: 11.5,
    inset: 5,
    isNumbered: true,
  },
};

export function stripMetrics(form: StripSize['form']): StripMetrics {
  return METRICS[form];
}

/** Where the wire lies on which the pulls are threaded. */
export function wireY(metrics: StripMetrics): number {
  return metrics.labelRow + (metrics.laneCount - 1) * metrics.lanePitch + metrics.markRadius + 2;
}

export function stripHeight(metrics: StripMetrics): number {
  return wireY(metrics) + metrics.foot + metrics.tickRow;
}

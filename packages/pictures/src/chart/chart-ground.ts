import { linearScale, type Scale, type Span } from '../figures/linear-scale.js';
import type { PressureFormat } from '../figures/pressure-format.js';
import { pressureTicks, type PressureTick } from '../figures/pressure-ticks.js';
import { spanOf } from '../figures/span-of.js';
import { textWidth } from '../figures/text-width.js';
import type { ChartFigures, ChartSize } from './chart-figures.js';

/** Measures of one form of the chart, px or pt. */
export interface ChartMetrics {
  readonly markRadius: number;
  readonly markTextSize: number;
  readonly labelTextSize: number;
  readonly tickTextSize: number;
}

const METRICS: Readonly<Record<ChartSize['form'] | 'narrow', ChartMetrics>> = {
  screen: { markRadius: 11, markTextSize: 13, labelTextSize: 14, tickTextSize: 13 },
  /** A screen as wide as a phone: smaller marks, so that duties stand apart. */
  narrow: { markRadius: 9, markTextSize: 11.5, labelTextSize: 13, tickTextSize: 12 },
  paper: { markRadius: 7, markTextSize: 8, labelTextSize: 8.5, tickTextSize: 7.5 },
};

/** Up to this width there is no room for words beside the plot: the figures stand alone, px. */
const NARROW_PX = 420;

/** No chart spans less, kPa and % duty. */
const LEAST_SPAN_KPA = 40;
const LEAST_SPAN_PCT = 5;
/** The room past the wall, as a share of the ceiling. */
const SHARE_PAST_CEILING = 0.06;

/** The chart's plot area, its scales and its measures. */
export interface ChartGround {
  /** Of the whole chart. */
  readonly width: number;
  readonly metrics: ChartMetrics;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
  readonly dutySpan: Span;
  readonly boostSpan: Span;
  readonly x: Scale;
  readonly y: Scale;
  readonly boostTicks: readonly PressureTick[];
  /** The longest of these is what the room at the right is for. */
  readonly levelTexts: LevelTexts;
}

/** Words at the right end of the levels they name; null where there is nothing to name. */
export interface LevelTexts {
  readonly ceiling: string | null;
  readonly target: string | null;
  readonly base: string | null;
}

/** Lays out margins and scales so that words and figures stand outside the plot, where no mark can cover them. */
export function chartGround(figures: ChartFigures, size: ChartSize, format: PressureFormat): ChartGround {
  const isNarrow = size.form === 'screen' && size.width < NARROW_PX;
  const metrics = METRICS[isNarrow ? 'narrow' : size.form];
  const dutySpan = spanOfDuty(figures);
  const boostSpan = spanOfBoost(figures);
  const top = metrics.labelTextSize * 1.7;
  const bottom = size.height - metrics.tickTextSize * 1.8;
  const mostTicks = Math.max(2, (bottom - top) / (metrics.tickTextSize * 3.2));
  const boostTicks = pressureTicks(boostSpan, format, mostTicks);
  const levelTexts = levelTextsOf(figures, format, isNarrow);
  const widest = Math.max(0, ...boostTicks.map((tick) => textWidth(tick.text, metrics.tickTextSize)));
  const left = Math.min(size.width * 0.3, widest + 8);
  const words = [levelTexts.ceiling, levelTexts.target, levelTexts.base, 'duty %'];
  const ofWords = Math.max(...words.map((word) => textWidth(word ?? '', metrics.labelTextSize)));
  const right = size.width - Math.min(size.width * 0.4, ofWords + 8);
  return {
    width: size.width,
    metrics,
    left,
    right,
    top,
    bottom,
    dutySpan,
    boostSpan,
    x: linearScale(dutySpan, left, right),
    y: linearScale(boostSpan, bottom, top),
    boostTicks,
    levelTexts,
  };
}

function levelTextsOf(figures: ChartFigures, format: PressureFormat, isNarrow: boolean): LevelTexts {
  const { ceilingKpa, targetKpa, baseKpa } = figures;
  const name = (word: string) => (isNarrow ? '' : `${word} `);
  return {
    ceiling: ceilingKpa === null ? 'no ceiling yet' : `${name('ceiling')}${format.write(ceilingKpa)}`,
    target: targetKpa === null ? 'no target yet' : `${name('target')}${format.write(targetKpa)}`,
    base: baseKpa === null ? null : `${name('base')}${format.write(baseKpa)}`,
  };
}

function spanOfDuty({ dutyRange, pulls, curve, next }: ChartFigures): Span {
  const duties = [...pulls.map((pull) => pull.dutyPct), ...curve.map((point) => point.duty)];
  if (next) duties.push(next.dutyPct);
  return spanOf([dutyRange.min, dutyRange.max, ...duties], LEAST_SPAN_PCT);
}

/** From zero; the far end of the prediction's range is cut off rather than let flatten all that matters. */
function spanOfBoost(figures: ChartFigures): Span {
  const { baseKpa, targetKpa, toleranceKpa, ceilingKpa, pulls, curve, next } = figures;
  const values = [0, ...pulls.map((pull) => pull.peakKpa)];
  if (baseKpa !== null) values.push(baseKpa);
  if (targetKpa !== null) values.push(targetKpa, targetKpa + toleranceKpa, targetKpa - toleranceKpa);
  if (next) values.push(next.lowKpa, next.highKpa);
  if (ceilingKpa !== null) values.push(ceilingKpa, ceilingKpa + Math.abs(ceilingKpa) * SHARE_PAST_CEILING);
  else values.push(...curve.map((point) => point.medianKpa));
  const finite = values.filter((value) => Number.isFinite(value));
  const span = spanOf(finite, LEAST_SPAN_KPA);
  return { low: Math.min(...finite) === 0 ? 0 : span.low, high: span.high };
}

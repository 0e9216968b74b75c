import type { Span } from './linear-scale.js';

const TIDY_FACTORS = [1, 2, 5, 10] as const;
const MINUS = '\u2212';
const MOST_DIGITS = 12;
/** From here on a figure is written as a power of ten. */
const LARGE = 1e7;

export interface Tick {
  readonly value: number;
  readonly text: string;
}

/**
 * Round values (1, 2 or 5 times a power of ten apart) inside a span, written with just the decimals they need.
 *
 * @param mostTicks upper bound of their number, >= 1
 * @returns rising; possibly empty where no round value lies inside
 */
export function tidyTicks(span: Span, mostTicks: number): readonly Tick[] {
  const step = tidyStep((span.high / 2 - span.low / 2) * (2 / mostTicks));
  if (!Number.isFinite(step)) return [];
  const first = Math.ceil(span.low / step);
  const ticks: Tick[] = [];
  for (let index = first; index * step <= span.high && ticks.length < mostTicks + 1; index += 1) {
    ticks.push({ value: index * step, text: writeTick(index * step, step) });
  }
  return ticks;
}

/** The smallest tidy step of at least `rough`. */
function tidyStep(rough: number): number {
  const power = 10 ** Math.floor(Math.log10(rough));
  const factor = TIDY_FACTORS.find((candidate) => candidate * power >= rough * (1 - 1e-9)) ?? 10;
  return factor * power;
}

function writeTick(value: number, step: number): string {
  if (Math.abs(value) >= LARGE) return value.toExponential(1).replace('-', MINUS);
  const digits = Math.min(MOST_DIGITS, Math.max(0, -Math.floor(Math.log10(step) + 1e-9)));
  const text = Math.abs(value).toFixed(digits);
  return value < 0 && Number(text) !== 0 ? MINUS + text : text;
}

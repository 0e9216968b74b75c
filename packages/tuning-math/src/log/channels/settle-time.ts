import type { PrintedUnit } from './unit-words.js';

/** Factor from the file's time column to seconds, and how it is known. */
export interface TimeScale {
  readonly secondsPerUnit: number;
  readonly unit: string;
  readonly certain: boolean;
}

const DAY_S = 86_400;
const SECONDS: Readonly<Record<string, number>> = { s: 1, ms: 1e-3, us: 1e-6, min: 60, h: 1, day: DAY_S };

/**
 * Unit of a time column: the printed one; else by the usual interval between rows, which for logs of
 * 0.5 Hz to 2 kHz leaves one choice except around 1 (1 Hz in seconds or 1 kHz in milliseconds).
 *
 * @param raw time column as logged
 * @param printed unit in header or unit row, or null
 * @param isClock cells were times of day, already in seconds
 * Source: common practice, no source.
 */
export function settleTime(raw: Float64Array, printed: PrintedUnit | null, isClock: boolean): TimeScale {
  if (isClock) return { secondsPerUnit: 1, unit: 'h:min:s', certain: true };
  const step = medianStep(raw);
  const known = printed === null ? undefined : SECONDS[printed.unit];
  if (known !== undefined && printed !== null) {
    const interval = step * known;
    return { secondsPerUnit: known, unit: printed.unit, certain: !(interval > 20 || interval < 2e-5) };
  }
  const [unit, secondsPerUnit] = unitByStep(step, Math.abs(raw[0] ?? 0));
  return { secondsPerUnit, unit, certain: step < 0.6 || (step > 4 && step < 2500) };
}

function unitByStep(step: number, first: number): [string, number] {
  if (step < 5e-5 && first > 20_000) return ['day', DAY_S];
  if (step <= 2) return ['s', 1];
  if (step <= 3000) return ['ms', 1e-3];
  return ['us', 1e-6];
}

/** Median of the positive steps between rows; NaN where there are none. */
export function medianStep(values: Float64Array): number {
  const steps: number[] = [];
  const stride = Math.max(1, Math.floor(values.length / 20_000));
  for (let row = 1; row < values.length; row += stride) {
    const step = (values[row] as number) - (values[row - 1] as number);
    if (step > 0) steps.push(step);
  }
  steps.sort((a, b) => a - b);
  return steps[Math.floor(steps.length / 2)] ?? NaN;
}

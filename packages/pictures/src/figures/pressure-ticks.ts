import type { Span } from './linear-scale.js';
import type { PressureFormat } from './pressure-format.js';
import { tidyTicks } from './tidy-ticks.js';

export interface PressureTick {
  readonly kpa: number;
  readonly text: string;
}

/** Ticks that are round in the person's unit, told where they stand in kPa. */
export function pressureTicks(
  spanKpa: Span,
  format: PressureFormat,
  mostTicks: number,
): readonly PressureTick[] {
  const span = { low: spanKpa.low / format.kpaPerUnit, high: spanKpa.high / format.kpaPerUnit };
  if (!Number.isFinite(span.low) || !Number.isFinite(span.high)) return [];
  return tidyTicks(span, mostTicks).map((tick) => ({
    kpa: tick.value * format.kpaPerUnit,
    text: tick.text,
  }));
}

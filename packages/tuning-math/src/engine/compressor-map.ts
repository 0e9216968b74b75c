import type { MapReference } from './corrected-flow.js';

/** One line of constant corrected shaft speed, from surge (least flow) to choke (most flow). */
export interface SpeedLine {
  readonly shaftSpeedRpm: number;
  /** Corrected flow, kg/s, strictly increasing. */
  readonly flowsKgPerS: readonly number[];
  readonly pressureRatios: readonly number[];
  /** Isentropic efficiency at each point, 0 to 1; null where the file has none. */
  readonly efficiencyRatios: readonly number[] | null;
}

/** A compressor map as the user entered it: at least two speed lines, slowest first. */
export interface CompressorMap {
  readonly reference: MapReference;
  readonly lines: readonly SpeedLine[];
}

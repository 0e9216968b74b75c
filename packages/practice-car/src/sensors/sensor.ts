import type { LogChannel } from './log-channel.js';

/** One channel of a logger and what stands between the truth and the file. */
export interface Sensor {
  readonly channel: LogChannel;
  /** Time constant of a first-order lag. */
  readonly lagS: number;
  /** One standard deviation of white noise, in the channel's unit. */
  readonly noise: number;
  /** Smallest step, in the channel's unit; 0 = none. */
  readonly quantum: number;
  /** Ends of the range: what lies beyond reads as the end. */
  readonly lowest: number;
  readonly highest: number;
  /** Readings each second; a slower channel repeats its last value. Never above the log's own rate. */
  readonly rateHz: number;
  /** How many times in a minute the channel freezes, for a fifth to one second. */
  readonly freezesPerMinute: number;
}

/** A logger: how often it writes a row, how evenly, and what each channel's sensor is like. */
export interface Logger {
  readonly rateHz: number;
  /** One standard deviation of the time between rows, as a share of it. */
  readonly jitterRatio: number;
  /** Share of rows that are missing from the file. */
  readonly droppedRatio: number;
  readonly sensors: readonly Sensor[];
}

import { LEVEL_DEPARTURE, LOCAL_DEPARTURE, LOCAL_LENGTH, SOAK_SHIFT } from './response-settings.js';

/** Covariance of two log peaks of one car around a tabulated curve, without the pull-to-pull scatter. */
export function departureCovariance(
  duties: readonly [number, number],
  heats: readonly [number, number],
): number {
  return dutyCovariance(...duties) + heatCovariance(...heats);
}

/** The part of `departureCovariance` that follows from the duties: of the level, and of what changes over duty. */
export function dutyCovariance(one: number, other: number): number {
  const apart = (one - other) / LOCAL_LENGTH;
  return (
    LEVEL_DEPARTURE * LEVEL_DEPARTURE + LOCAL_DEPARTURE * LOCAL_DEPARTURE * Math.exp(-0.5 * apart * apart)
  );
}

/** The part of `departureCovariance` that follows from heat soak. */
export function heatCovariance(one: number, other: number): number {
  return SOAK_SHIFT * SOAK_SHIFT * one * other;
}

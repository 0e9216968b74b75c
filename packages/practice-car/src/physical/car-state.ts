/** Where each quantity sits in the state vector of a running car. */
export const STATE = {
  chargeKg: 0,
  chargeJ: 1,
  shaftRadPerS: 2,
  rodM: 3,
  liftPa: 4,
  shutPa: 5,
  coolerK: 6,
  speedMps: 7,
  driveRatio: 8,
  slipRatio: 9,
} as const;

export const STATE_SIZE = 10;

/** One quantity of the state vector, by its place in `STATE`; absent entries read as 0. */
export function readState(state: Float64Array, place: number): number {
  return state[place] ?? 0;
}

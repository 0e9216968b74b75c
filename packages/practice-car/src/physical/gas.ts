/** Dry air and burnt gas. Source: Heywood, Internal Combustion Engine Fundamentals, table values rounded. */
export const AIR_R = 287.05;
export const AIR_CP = 1005;
export const AIR_CV = AIR_CP - AIR_R;
/** (gamma - 1) / gamma for gamma = 1.4. */
export const AIR_EXPONENT = 0.4 / 1.4;
export const EXHAUST_CP = 1150;
/** (gamma - 1) / gamma for gamma = 1.33. */
export const EXHAUST_EXPONENT = 0.33 / 1.33;
export const GRAVITY_MPS2 = 9.80665;

/** Choked nozzle constant sqrt(gamma/R) * (2/(gamma+1))^((gamma+1)/(2(gamma-1))), in s K^0.5 / m. */
const choked = (gamma: number): number =>
  Math.sqrt(gamma / AIR_R) * (2 / (gamma + 1)) ** ((gamma + 1) / (2 * (gamma - 1)));
export const AIR_CHOKED = choked(1.4);
export const EXHAUST_CHOKED = choked(1.33);

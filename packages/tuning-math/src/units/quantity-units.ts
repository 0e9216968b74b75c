const POUND_KG = 0.45359237;
const FOOT_M = 0.3048;
const INCH_M = 0.0254;
const STANDARD_GRAVITY = 9.80665;
const POUND_FORCE_N = POUND_KG * STANDARD_GRAVITY;

/**
 * Units that differ by a factor alone, by quantity; each figure is the size of the unit in the first unit
 * of its row. All exact by definition (NIST SP 811, 2008, Appendix B): pound 0.453 592 37 kg,
 * inch 0.0254 m, standard gravity 9.806 65 m/s². `hp` is 550 ft·lbf/s, `metricHp` is 75 kgf·m/s.
 */
export const QUANTITY_UNITS = {
  speed: { kmh: 1, mph: 1.609344, mPerS: 3.6 },
  length: { m: 1, km: 1000, mm: 0.001, ft: FOOT_M, inch: INCH_M, mile: 1609.344 },
  volume: { litre: 1, cm3: 0.001, in3: INCH_M ** 3 * 1000 },
  mass: { kg: 1, g: 0.001, lb: POUND_KG },
  massFlow: { kgPerS: 1, gPerS: 0.001, kgPerH: 1 / 3600, lbPerMin: POUND_KG / 60, lbPerH: POUND_KG / 3600 },
  volumeFlow: { m3PerS: 1, litrePerS: 0.001, ft3PerMin: FOOT_M ** 3 / 60 },
  power: {
    kW: 1,
    W: 0.001,
    hp: (550 * FOOT_M * POUND_FORCE_N) / 1000,
    metricHp: (75 * STANDARD_GRAVITY) / 1000,
  },
  torque: { nm: 1, lbfFt: POUND_FORCE_N * FOOT_M, kgfM: STANDARD_GRAVITY },
} as const satisfies Record<string, Record<string, number>>;

/** A quantity whose units differ by a factor alone. */
export type Quantity = keyof typeof QUANTITY_UNITS;

/** Name of a unit of that quantity. */
export type QuantityUnit<Q extends Quantity> = keyof (typeof QUANTITY_UNITS)[Q] & string;

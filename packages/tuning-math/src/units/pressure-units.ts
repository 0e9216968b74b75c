const STANDARD_GRAVITY = 9.80665;
const POUND_KG = 0.45359237;
const INCH_M = 0.0254;
const MERCURY_CONVENTIONAL_KG_M3 = 13595.1;
const WATER_CONVENTIONAL_KG_M3 = 1000;

/** How many kPa one unit is, and how a person reads it. */
interface PressureUnitFacts {
  readonly kpaPerUnit: number;
  readonly symbol: string;
  /** Decimals that a person needs: about 1 kPa for boost, finer only where the unit is coarse. */
  readonly fractionDigits: number;
}

/**
 * Pressure units by name. Factors follow from exact definitions: pound 0.453 592 37 kg, inch 0.0254 m,
 * standard gravity 9.806 65 m/s², conventional mercury 13 595.1 kg/m³ and water 1000 kg/m³
 * (NIST SP 811, 2008, Appendix B). `inHg` and `mmHg` are the conventional ones (mercury at 0 °C).
 */
export const PRESSURE_UNITS = {
  kPa: { kpaPerUnit: 1, symbol: 'kPa', fractionDigits: 0 },
  Pa: { kpaPerUnit: 0.001, symbol: 'Pa', fractionDigits: 0 },
  hPa: { kpaPerUnit: 0.1, symbol: 'hPa', fractionDigits: 0 },
  mbar: { kpaPerUnit: 0.1, symbol: 'mbar', fractionDigits: 0 },
  bar: { kpaPerUnit: 100, symbol: 'bar', fractionDigits: 2 },
  psi: {
    kpaPerUnit: (POUND_KG * STANDARD_GRAVITY) / (INCH_M * INCH_M) / 1000,
    symbol: 'psi',
    fractionDigits: 1,
  },
  atm: { kpaPerUnit: 101.325, symbol: 'atm', fractionDigits: 3 },
  kgfPerCm2: { kpaPerUnit: 98.0665, symbol: 'kgf/cm²', fractionDigits: 2 },
  inHg: {
    kpaPerUnit: (MERCURY_CONVENTIONAL_KG_M3 * STANDARD_GRAVITY * INCH_M) / 1000,
    symbol: 'inHg',
    fractionDigits: 1,
  },
  mmHg: {
    kpaPerUnit: (MERCURY_CONVENTIONAL_KG_M3 * STANDARD_GRAVITY) / 1e6,
    symbol: 'mmHg',
    fractionDigits: 0,
  },
  torr: { kpaPerUnit: 101.325 / 760, symbol: 'Torr', fractionDigits: 0 },
  inH2O: {
    kpaPerUnit: (WATER_CONVENTIONAL_KG_M3 * STANDARD_GRAVITY * INCH_M) / 1000,
    symbol: 'inH₂O',
    fractionDigits: 0,
  },
} as const satisfies Record<string, PressureUnitFacts>;

/** Name of a pressure unit: a key of `PRESSURE_UNITS`. */
export type PressureUnit = keyof typeof PRESSURE_UNITS;

import { OutOfRangeError } from '../errors.js';
import { requireNumber } from '../require-number.js';

/**
 * Published power-correction formulas. `sae-j1349-1990`, `sae-j1349-2004`: spark ignition, 85 % mechanical
 * efficiency built in. `iso-1585-spark`: spark ignition, aspirated or pressure-charged. `din-70020`:
 * withdrawn, total pressure.
 */
export type CorrectionStandard = 'sae-j1349-1990' | 'sae-j1349-2004' | 'iso-1585-spark' | 'din-70020';

/** The air of a power measurement. */
export interface CorrectionAir {
  /** Dry pressure at the inlet, absolute kPa; for `din-70020` the total pressure. 50 to 115. */
  readonly inletAbsKpa: number;
  /** Inlet air, °C, -45 to 60. */
  readonly inletC: number;
}

/** A correction factor with the reasons for not trusting it. */
export interface PowerCorrection {
  readonly factor: number;
  readonly standard: CorrectionStandard;
  /** Whether air and factor lie in the range that the standard states. */
  readonly valid: boolean;
  /** What lies outside, in plain words; empty when valid. */
  readonly flags: readonly string[];
}

interface StandardFacts {
  readonly factor: (pressureAbsKpa: number, temperatureK: number) => number;
  readonly pressureAbsKpa: readonly [number, number];
  readonly temperatureC: readonly [number, number];
  readonly factorRange: readonly [number, number];
}

// The older texts write T = t + 273, not 273.15; their printed reference 298 K is 25 °C that way.
const TEXT_ICE_POINT_K = 273;
const ANY: readonly [number, number] = [0, Infinity];

const STANDARDS: Readonly<Record<CorrectionStandard, StandardFacts>> = {
  'sae-j1349-1990': {
    factor: (p, t) => 1.18 * (99 / p) * Math.sqrt(t / 298) - 0.18,
    pressureAbsKpa: [90, 105],
    temperatureC: [15, 35],
    factorRange: ANY,
  },
  'sae-j1349-2004': {
    factor: (p, t) => 1.176 * (99 / p) * Math.sqrt(t / 298) - 0.176,
    pressureAbsKpa: [90, 105],
    temperatureC: [15, 35],
    factorRange: ANY,
  },
  'iso-1585-spark': {
    factor: (p, t) => (99 / p) ** 1.2 * (t / 298) ** 0.6,
    pressureAbsKpa: ANY,
    temperatureC: [10, 45],
    factorRange: [0.93, 1.07],
  },
  'din-70020': {
    factor: (p, t) => (101.3 / p) * Math.sqrt(t / 293),
    pressureAbsKpa: ANY,
    temperatureC: [-45, 60],
    factorRange: ANY,
  },
};

/**
 * Factor that brings a measured power to the reference air of a standard. With a closed-loop boost engine
 * the controller has already made up for part of the air, so show the uncorrected power first.
 *
 * @param air inlet pressure (dry, but total for `din-70020`) and temperature
 * @returns the factor also outside the stated range, with flags that say what lies outside
 * @throws NotFiniteError; OutOfRangeError, also for an unknown standard
 * Source: SAE J1349 JUN1990; AUG2004 constants from memory; ISO 1585 / UN R85 spark ignition, exponents and
 * 0.93 to 1.07 from memory, test range 283 to 318 K from Regulation (EU) 134/2014; DIN 70020 from memory.
 * @example powerCorrection({ inletAbsKpa: 99, inletC: 25 }, 'iso-1585-spark').factor // 1
 */
export function powerCorrection(air: CorrectionAir, standard: CorrectionStandard): PowerCorrection {
  requireNumber('powerCorrection', 'inletAbsKpa', air.inletAbsKpa, { min: 50, max: 115 });
  requireNumber('powerCorrection', 'inletC', air.inletC, { min: -45, max: 60 });
  if (!Object.hasOwn(STANDARDS, standard)) {
    const allowed = `to be one of ${Object.keys(STANDARDS).join(', ')}`;
    throw new OutOfRangeError('powerCorrection', { argument: 'standard', value: standard, allowed });
  }
  const facts = STANDARDS[standard];
  const factor = facts.factor(air.inletAbsKpa, air.inletC + TEXT_ICE_POINT_K);
  const flags = [
    flagOutside('inlet pressure', air.inletAbsKpa, facts.pressureAbsKpa, 'kPa'),
    flagOutside('inlet temperature', air.inletC, facts.temperatureC, '°C'),
    flagOutside('factor', factor, facts.factorRange, ''),
  ].filter((flag) => flag !== null);
  return { factor, standard, valid: flags.length === 0, flags };
}

function flagOutside(
  what: string,
  value: number,
  [low, high]: readonly [number, number],
  unit: string,
): string | null {
  if (value >= low && value <= high) return null;
  const digits = unit === '' ? 3 : 1;
  const words = unit === '' ? '' : ` ${unit}`;
  return `${what} ${value.toFixed(digits)}${words} is outside ${low} to ${high}${words}`;
}

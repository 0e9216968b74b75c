import { formatNumber } from '../units/format-number.js';
import { formatPressure } from '../units/format-pressure.js';
import { PRESSURE_UNITS, type PressureUnit } from '../units/pressure-units.js';
import type { Amount, SentencePiece } from './sentence-types.js';

/**
 * A sentence of the book for a reader: its pressures in the reader's unit, everything else as it is.
 *
 * @param pieces those of a `Sentence`
 * @param unit the reader's
 * @throws NotFiniteError for an amount that is not finite, UnknownUnitError
 * @example writeSentence(['Expect ', { value: 140, unit: 'kPa' }], 'psi') // 'Expect 20.3 psi'
 */
export function writeSentence(pieces: readonly SentencePiece[], unit: PressureUnit): string {
  return pieces.map((piece) => (typeof piece === 'string' ? piece : writeAmount(piece, unit))).join('');
}

function writeAmount({ value, to, unit }: Amount, pressure: PressureUnit): string {
  const isConverted = unit === 'kPa' && pressure !== 'kPa';
  const figure = (number: number) =>
    isConverted
      ? formatPressure(number, pressure, { withUnit: false })
      : formatNumber(number, digitsOf(number));
  const figures = to === undefined ? figure(value) : `${figure(value)} to ${figure(to)}`;
  return `${figures} ${isConverted ? PRESSURE_UNITS[pressure].symbol : unit}`;
}

/** Decimals that a number is given with: an amount is rounded already. */
function digitsOf(value: number): number {
  const decimals = String(value).split('.')[1] ?? '';
  return Math.min(12, decimals.length);
}

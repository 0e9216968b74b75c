import type { Reason, Units } from '@pullbook/contracts';
import {
  convertPressure,
  formatNumber,
  formatPressure,
  formatTemperature,
  sayPressures,
  writeSentence,
} from '@pullbook/tuning-math';

/** Decimals of a measured peak: finer than a goal by one figure. */
const peakDigits = { kPa: 1, bar: 3, psi: 1 } as const;

export interface PersonsUnits extends Units {
  /** 'kPa', 'bar' or 'psi', as it stands behind a figure. */
  readonly pressureWord: string;
  readonly temperatureWord: string;
  /** '140 kPa' */
  readonly write: (kpa: number) => string;
  /** '140' */
  readonly figure: (kpa: number) => string;
  /** '124.6', for measured peaks */
  readonly peak: (kpa: number) => string;
  /** A text of the book, its pressures in this person's unit. */
  readonly say: (text: string) => string;
  /** A reason, its pressures in this person's unit. */
  readonly sayReason: (reason: Pick<Reason, 'text' | 'pieces'>) => string;
  readonly writeTemperature: (celsius: number) => string;
  /** Text to put into a field whose unit stands behind it; empty for null. */
  readonly toField: (kpa: number | null) => string;
}

/** How a person with these units reads pressures and temperatures. */
export function unitsOf(units: Units): PersonsUnits {
  const { pressure, temperature } = units;
  const figure = (kpa: number) => formatPressure(kpa, pressure, { withUnit: false });
  return {
    pressure,
    temperature,
    pressureWord: pressure,
    temperatureWord: temperature === 'C' ? '°C' : '°F',
    write: (kpa) => formatPressure(kpa, pressure),
    figure,
    say: (text) => sayPressures(text, figure, pressure),
    // One that was put on record before reasons came in pieces stands as it is, with its unit.
    sayReason: ({ text, pieces = [text] }) => writeSentence(pieces, pressure),
    peak: (kpa) => formatPressure(kpa, pressure, { withUnit: false, fractionDigits: peakDigits[pressure] }),
    writeTemperature: (celsius) => formatTemperature(celsius, temperature),
    toField: (kpa) =>
      kpa === null
        ? ''
        : trimZeros(formatNumber(convertPressure(kpa, 'kPa', pressure), pressure === 'bar' ? 3 : 1)),
  };
}

function trimZeros(text: string): string {
  return text.includes('.') ? text.replace(/0+$/, '').replace(/[.]$/, '') : text;
}

import type { Sentence } from '../sentences/index.js';
import type { LogShape } from './reading/log-shape.js';
import type { ChannelQuantity } from './channel-quantities.js';
import type { LogNotice } from './log-notice.js';

/** How sure the recognition is: told by the recipe or by a printed unit; or guessed, to be confirmed. */
export type RecognitionBasis = 'recipe' | 'name-and-unit' | 'name-and-values' | 'none';

/** One column of the file, as it was understood. */
export interface LogChannel {
  readonly header: string;
  readonly quantity: ChannelQuantity;
  /** Unit in the file, for example `psi`; the samples inside are in the base unit of the quantity. */
  readonly unit: string;
  /** Of a pressure: as it was understood. */
  readonly reference: 'gauge' | 'absolute' | null;
  /** Position in the file, from 0. */
  readonly column: number;
  /** Which of several columns of that header, from 0. */
  readonly occurrence: number;
  /** Some of its first cells as they stand in the file, for a person to recognise it by. */
  readonly samples: readonly string[];
  readonly basis: RecognitionBasis;
  /** False where quantity or unit is a guess that a person should confirm before trusting the figures. */
  readonly certain: boolean;
  readonly sampleCount: number;
  readonly missingCount: number;
  /** Lowest and highest sample, in the file's unit; null for a column without numbers. */
  readonly lowest: number | null;
  readonly highest: number | null;
}

/** How the file was written, as it was found. */
export interface LogLayout {
  readonly encoding: 'utf-8' | 'utf-16le' | 'utf-16be' | 'windows-1252';
  readonly delimiter: ',' | ';' | '\t' | '|' | ' ';
  readonly decimalMark: '.' | ',';
  /** Lines before the header row. */
  readonly preambleLineCount: number;
  readonly hasHeader: boolean;
  readonly hasUnitRow: boolean;
}

/**
 * The samples of one log, column by column, in base units (kPa gauge for boost, s, r/min, km/h, %, °C).
 * NaN marks 'no sample here'. All columns have the length of `timeS`, which rises strictly.
 */
export interface LogSamples {
  readonly channels: readonly LogChannel[];
  readonly layout: LogLayout;
  readonly shape: LogShape;
  readonly timeS: Float64Array;
  /** Added to `timeS` it gives the time as logged: 0, or the clock or date of the first row. */
  readonly timeOriginS: number;
  readonly columns: ReadonlyMap<ChannelQuantity, Float32Array>;
  /** The kept columns by their position in the file: pressures as they were logged, not as boost. */
  readonly byPosition: ReadonlyMap<number, Float32Array>;
  /** Why unit or kind of the boost column is in doubt; null where it is not. */
  readonly boostDoubt: Sentence | null;
  readonly boostSource: 'gauge-column' | 'absolute-column';
  /** Standard uncertainty of all boost because the air pressure had to be assumed, kPa; 0 where it is known. */
  readonly airUncertaintyKpa: number;
  /** Samples a second, from the median interval; null for fewer than two rows. */
  readonly sampleRateHz: number | null;
  readonly rowCount: number;
  readonly warnings: readonly LogNotice[];
}

import Papa from 'papaparse';
import { MissingColumnError, NotANumberTextError } from '../errors.js';
import { requireNumber } from '../require-number.js';
import { convertQuantity } from '../units/convert-quantity.js';
import { parseNumber } from '../units/parse-number.js';
import type { QuantityUnit } from '../units/quantity-units.js';

const COLUMNS = { speed: 'speed', flow: 'flow', ratio: 'pressure ratio', efficiency: 'efficiency' } as const;

/** One point of a compressor map, in kg/s. */
export interface MapRow {
  readonly shaftSpeedRpm: number;
  readonly flowKgPerS: number;
  readonly pressureRatio: number;
  readonly efficiencyRatio: number | null;
}

/** The lines of a map's file that hold something, each with its number in the file, the header being one of them. */
export interface MapTable {
  readonly hasEfficiency: boolean;
  readonly rows: readonly { readonly number: number; readonly cells: Readonly<Record<string, string>> }[];
}

/** @throws MissingColumnError */
export function parseMapTable(csv: string): MapTable {
  const linesBefore = csv.slice(0, csv.length - csv.trimStart().length).split('\n').length;
  const table = Papa.parse<Record<string, string>>(csv.trim(), {
    header: true,
    transformHeader: (header) => header.trim().toLowerCase().replaceAll('_', ' '),
  });
  const headers = table.meta.fields ?? [];
  for (const column of [COLUMNS.speed, COLUMNS.flow, COLUMNS.ratio]) {
    if (headers.includes(column)) continue;
    const fault = { argument: 'csv', value: headers.join(', '), allowed: `to have a column '${column}'` };
    throw new MissingColumnError('readCompressorMap', fault);
  }
  const numbered = table.data.map((cells, index) => ({ number: linesBefore + index + 1, cells }));
  return { hasEfficiency: headers.includes(COLUMNS.efficiency), rows: numbered.filter(hasCells) };
}

function hasCells({ cells }: MapTable['rows'][number]): boolean {
  return Object.values(cells).some((cell) => String(cell).trim() !== '');
}

/** @throws NotANumberTextError, NotFiniteError, OutOfRangeError, each naming row and column */
export function readMapRow(
  { number: rowNumber, cells }: MapTable['rows'][number],
  hasEfficiency: boolean,
  flowUnit: QuantityUnit<'massFlow'>,
): MapRow {
  const number = (column: string, min: number, max: number): number => {
    const where = `row ${rowNumber}, column '${column}'`;
    return requireNumber('readCompressorMap', where, readCell(cells[column], where), { min, max });
  };
  const flow = number(COLUMNS.flow, 0, Infinity);
  const efficiency = hasEfficiency ? number(COLUMNS.efficiency, 0.01, 100) : null;
  return {
    shaftSpeedRpm: number(COLUMNS.speed, 1, 500_000),
    flowKgPerS: convertQuantity(flow, { quantity: 'massFlow', from: flowUnit, to: 'kgPerS' }),
    pressureRatio: number(COLUMNS.ratio, 1, 10),
    efficiencyRatio: efficiency === null ? null : efficiency > 1 ? efficiency / 100 : efficiency,
  };
}

function readCell(text: string | undefined, where: string): number {
  try {
    return parseNumber(text ?? '');
  } catch (cause) {
    if (!(cause instanceof NotANumberTextError)) throw cause;
    throw new NotANumberTextError('readCompressorMap', {
      argument: where,
      value: cause.value,
      allowed: cause.allowed,
    });
  }
}

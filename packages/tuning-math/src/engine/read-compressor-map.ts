import Papa from 'papaparse';
import { MissingColumnError, NotANumberTextError, TooFewPointsError } from '../errors.js';
import { requireStrictlyIncreasing } from '../require-series.js';
import { requireNumber } from '../require-number.js';
import { convertQuantity } from '../units/convert-quantity.js';
import { parseNumber } from '../units/parse-number.js';
import type { QuantityUnit } from '../units/quantity-units.js';
import type { CompressorMap, SpeedLine } from './compressor-map.js';
import type { MapReference } from './corrected-flow.js';

/** How the figures of the file are to be read. */
export interface MapFileOptions {
  readonly flowUnit: QuantityUnit<'massFlow'>;
  readonly reference: MapReference;
}

const COLUMNS = { speed: 'speed', flow: 'flow', ratio: 'pressure ratio', efficiency: 'efficiency' } as const;
const LEAST_POINTS_OF_A_LINE = 3;

interface MapRow {
  readonly shaftSpeedRpm: number;
  readonly flowKgPerS: number;
  readonly pressureRatio: number;
  readonly efficiencyRatio: number | null;
}

/**
 * A compressor map from the points that a user typed or traced: one row a point, columns `speed` (corrected
 * shaft speed, r/min), `flow` (corrected), `pressure ratio` and, if known, `efficiency` (0 to 1, or %).
 * Points of one speed make a speed line; its point of least flow lies on the surge line, its point of most
 * flow at choke.
 *
 * @param csv text with a header line; comma, semicolon or tab between the fields
 * @returns speed lines, slowest first, in kg/s
 * @throws MissingColumnError; NotANumberTextError naming row and column; TooFewPointsError for fewer than
 *   two lines or three points in one; NotStrictlyIncreasingError for two points of one line at one flow;
 *   OutOfRangeError
 * Source: layout of our own; RFC 4180 for the file.
 */
export function readCompressorMap(csv: string, options: MapFileOptions): CompressorMap {
  const table = Papa.parse<Record<string, string>>(csv.trim(), {
    header: true,
    skipEmptyLines: 'greedy',
    transformHeader: (header) => header.trim().toLowerCase().replaceAll('_', ' '),
  });
  const headers = table.meta.fields ?? [];
  for (const column of [COLUMNS.speed, COLUMNS.flow, COLUMNS.ratio]) {
    if (headers.includes(column)) continue;
    const fault = { argument: 'csv', value: headers.join(', '), allowed: `to have a column '${column}'` };
    throw new MissingColumnError('readCompressorMap', fault);
  }
  const hasEfficiency = headers.includes(COLUMNS.efficiency);
  const rows = table.data.map((cells, index) => readRow(cells, index + 2, hasEfficiency, options));
  const speeds = [...new Set(rows.map((row) => row.shaftSpeedRpm))].sort((a, b) => a - b);
  const lines = speeds.map((speed) => buildLine(speed, rows));
  if (lines.length < 2) {
    const value = `${lines.length} of them`;
    throw new TooFewPointsError('readCompressorMap', {
      argument: 'speed lines',
      value,
      allowed: 'to be 2 or more',
    });
  }
  for (const end of [0, -1]) {
    const ratios = lines.map((line) => line.pressureRatios.at(end) ?? NaN);
    const name = end === 0 ? 'pressure ratio at surge' : 'pressure ratio at choke';
    requireStrictlyIncreasing('readCompressorMap', name, ratios);
  }
  return { reference: options.reference, lines };
}

function readRow(
  cells: Readonly<Record<string, string>>,
  rowNumber: number,
  hasEfficiency: boolean,
  { flowUnit }: MapFileOptions,
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

function buildLine(shaftSpeedRpm: number, rows: readonly MapRow[]): SpeedLine {
  const points = rows
    .filter((row) => row.shaftSpeedRpm === shaftSpeedRpm)
    .sort((a, b) => a.flowKgPerS - b.flowKgPerS);
  if (points.length < LEAST_POINTS_OF_A_LINE) {
    throw new TooFewPointsError('readCompressorMap', {
      argument: `speed line ${shaftSpeedRpm}`,
      value: `${points.length} points`,
      allowed: `to have at least ${LEAST_POINTS_OF_A_LINE} points`,
    });
  }
  const flowsKgPerS = points.map((point) => point.flowKgPerS);
  requireStrictlyIncreasing('readCompressorMap', `flow of speed line ${shaftSpeedRpm}`, flowsKgPerS);
  const efficiencies = points.map((point) => point.efficiencyRatio);
  return {
    shaftSpeedRpm,
    flowsKgPerS,
    pressureRatios: points.map((point) => point.pressureRatio),
    efficiencyRatios: efficiencies.every((value) => value !== null) ? efficiencies : null,
  };
}

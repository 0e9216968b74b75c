import { TooFewPointsError } from '../errors.js';
import { requireStrictlyIncreasing } from '../require-series.js';
import type { QuantityUnit } from '../units/quantity-units.js';
import type { CompressorMap, SpeedLine } from './compressor-map.js';
import type { MapReference } from './corrected-flow.js';
import { parseMapTable, readMapRow, type MapRow } from './map-table.js';

/** How the figures of the file are to be read. */
export interface MapFileOptions {
  readonly flowUnit: QuantityUnit<'massFlow'>;
  readonly reference: MapReference;
}

const LEAST_POINTS_OF_A_LINE = 3;

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
  const table = parseMapTable(csv);
  const rows = table.rows.map((row) => readMapRow(row, table.hasEfficiency, options.flowUnit));
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

import { ArgumentError } from '../errors.js';
import { parseMapTable, readMapRow } from './map-table.js';
import { readCompressorMap, type MapFileOptions } from './read-compressor-map.js';

/**
 * All that keeps a file from being read as a compressor map: each row that cannot be read, or, where every row can,
 * the first thing that is wrong with the lines they make.
 *
 * @returns faults in the order of the file, each naming its row and column; empty for a map that can be read
 * Source: layout of our own.
 * @example findMapFaults('speed,flow,pressure ratio\n60000,x,1.5', options)[0].argument // "row 2, column 'flow'"
 */
export function findMapFaults(csv: string, options: MapFileOptions): readonly ArgumentError[] {
  const table = faultOf(() => parseMapTable(csv));
  if (table instanceof ArgumentError) return [table];
  const ofRows = table.rows
    .map((row) => faultOf(() => readMapRow(row, table.hasEfficiency, options.flowUnit)))
    .filter((outcome) => outcome instanceof ArgumentError);
  if (ofRows.length > 0) return ofRows;
  const ofLines = faultOf(() => readCompressorMap(csv, options));
  return ofLines instanceof ArgumentError ? [ofLines] : [];
}

function faultOf<T>(read: () => T): T | ArgumentError {
  try {
    return read();
  } catch (error) {
    if (error instanceof ArgumentError) return error;
    throw error;
  }
}

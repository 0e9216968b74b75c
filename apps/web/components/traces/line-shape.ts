import type { TraceIndex } from '@pullbook/contracts';
import { pickLevel } from '@pullbook/tuning-math';
import { widthOf, type TimeWindow } from './time-window';
import type { Piece, TraceReader } from './trace-reader';

/** A line as it is drawn: sample by sample, or for each column of pixels what it spans (NaN where nothing is). */
export type LineShape =
  | { readonly kind: 'points'; readonly timesS: number[]; readonly values: number[] }
  | { readonly kind: 'columns'; readonly lows: Float32Array; readonly highs: Float32Array };

/** Where a line is interrupted: samples further apart than so many usual intervals. */
const GAP_INTERVALS = 3;

/**
 * Shape of one channel over a stretch of the log. From more than one row for each column of pixels on it is drawn in
 * columns, so that no extreme is lost and the cost is that of the width, not of the log.
 *
 * @param widthPx columns of pixels
 * @returns null while nothing has come
 */
export function lineShape(
  index: TraceIndex,
  reader: TraceReader,
  channel: number,
  { window, widthPx }: { readonly window: TimeWindow; readonly widthPx: number },
): LineShape | null {
  const rows = reader.rowsOf(window.fromS, window.toS);
  if (rows === null) reader.wantCoarsest(channel);
  if (rows === null || widthPx < 1) return null;
  const rowS = rowInterval(index);
  const rowsPerPixel = widthOf(window) / rowS / widthPx;
  const level = pickLevel(index.levels, rowsPerPixel);
  const gapS = GAP_INTERVALS * Math.max(rowS, index.channels[channel]?.intervalS ?? 0);
  const pieces: Piece[] = [];
  reader.visit(channel, rows, level, (piece) => pieces.push(piece));
  if (pieces.length === 0) return null;
  return rowsPerPixel <= 1 && pieces.every(({ rowsPerBin }) => rowsPerBin === 1)
    ? pointsOf(pieces, gapS)
    : columnsOf(pieces, { window, widthPx, gapS, rowS });
}

/** Usual time between two rows, s. */
export function rowInterval({ sampleRateHz, fromS, toS, rowCount }: TraceIndex): number {
  return sampleRateHz === null ? Math.max(1e-6, (toS - fromS) / Math.max(1, rowCount)) : 1 / sampleRateHz;
}

/** All samples; a NaN parts the line. */
function pointsOf(pieces: readonly Piece[], gapS: number): LineShape {
  const timesS: number[] = [];
  const values: number[] = [];
  for (const { times, lows, first, end } of pieces) {
    for (let bin = first; bin < end; bin += 1) {
      const [timeS, value] = [times[bin] as number, lows[bin] as number];
      if (Number.isNaN(value)) continue;
      if (timeS - (timesS.at(-1) ?? timeS) > gapS) {
        timesS.push(timeS);
        values.push(NaN);
      }
      timesS.push(timeS);
      values.push(value);
    }
  }
  return { kind: 'points', timesS, values };
}

interface Columns {
  readonly window: TimeWindow;
  readonly widthPx: number;
  readonly gapS: number;
  readonly rowS: number;
}

function columnsOf(pieces: readonly Piece[], { window, widthPx, gapS, rowS }: Columns): LineShape {
  const lows = new Float32Array(widthPx).fill(NaN);
  const highs = new Float32Array(widthPx).fill(NaN);
  const perS = widthPx / widthOf(window);
  for (const { times, lows: low, highs: high, first, end, rowsPerBin } of pieces) {
    const longestS = GAP_INTERVALS * rowsPerBin * rowS;
    for (let bin = first; bin < end; bin += 1) {
      if (Number.isNaN(low[bin])) continue;
      const startS = times[bin] as number;
      const endS = Math.min(times[bin + 1] as number, startS + longestS);
      const from = Math.max(0, Math.floor((startS - window.fromS) * perS));
      const to = Math.min(widthPx - 1, Math.ceil((endS - window.fromS) * perS) - 1);
      for (let column = from; column <= Math.max(from, to) && column < widthPx; column += 1) {
        if (!((lows[column] as number) <= (low[bin] as number))) lows[column] = low[bin] as number;
        if (!((highs[column] as number) >= (high[bin] as number))) highs[column] = high[bin] as number;
      }
    }
  }
  join(lows, highs, Math.ceil(gapS * perS) + 1);
  return { kind: 'columns', lows, highs };
}

/** Neighbouring columns touch, and a channel slower than the pixels is drawn through, but not over a gap. */
function join(lows: Float32Array, highs: Float32Array, longestPx: number): void {
  let last = -1;
  for (let column = 0; column < lows.length; column += 1) {
    if (Number.isNaN(lows[column])) continue;
    if (last >= 0 && column - last <= longestPx) {
      const [low, high] = [lows[column] as number, highs[column] as number];
      const [lowBefore, highBefore] = [lows[last] as number, highs[last] as number];
      for (let between = last + 1; between < column; between += 1) {
        const share = (between - last) / (column - last);
        lows[between] = lowBefore + share * (low - lowBefore);
        highs[between] = highBefore + share * (high - highBefore);
      }
    }
    last = column;
  }
}

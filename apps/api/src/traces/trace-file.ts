import type { TraceChannel, TraceLevel } from '@pullbook/contracts';

/**
 * A trace file: tiles compressed one by one, then the place of each tile (doubles), then the facts as JSON, then where
 * places and facts begin (two doubles). Slot 0 holds the times, slot n + 1 the channel n; each slot has the tiles of
 * its levels in turn, finest first. Little-endian, as all processors that Node runs on.
 */
export interface TraceFacts {
  readonly rowCount: number;
  readonly fromS: number;
  readonly toS: number;
  readonly levels: readonly TraceLevel[];
  readonly channels: readonly TraceChannel[];
}

export const TAIL_BYTES = 16;

/** Changes with the layout of the file or with what is in it. */
export const TRACE_VERSION = 'trace-1';

/** Tiles of all levels of one slot. */
export function tilesOfSlot(levels: readonly TraceLevel[], tileBins: number): number {
  return levels.reduce((sum, { binCount }) => sum + Math.ceil(binCount / tileBins), 0);
}

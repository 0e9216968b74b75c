import { MapAir, MapFlowUnit, MapLine } from '@pullbook/contracts';
import type { CompressorMap } from '@pullbook/tuning-math';
import { z } from 'zod';

/** A compressor map as the book keeps it: as it was entered, and as it was read. */
export const StoredMap = z.object({
  csv: z.string(),
  flowUnit: MapFlowUnit,
  reference: MapAir,
  source: z.string(),
  lines: z.array(MapLine),
});
export type StoredMap = z.infer<typeof StoredMap>;

const MapSource = StoredMap.pick({ csv: true, flowUnit: true, reference: true });

/** What all else of a stored map follows from; null where there is none. Far cheaper to read than its lines. */
export function mapSourceOf(stored: unknown): z.infer<typeof MapSource> | null {
  return stored === null || stored === undefined ? null : MapSource.parse(stored);
}

/** The map of a stored car; null where it has none. */
export function storedMapOf(stored: unknown): StoredMap | null {
  return stored === null || stored === undefined ? null : StoredMap.parse(stored);
}

/** The part of it that computations run on. */
export function mapOf(stored: StoredMap | null): CompressorMap | null {
  return stored === null ? null : { reference: stored.reference, lines: stored.lines };
}

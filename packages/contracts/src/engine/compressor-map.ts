import * as z from 'zod';
import { Id, RecordRevision } from '../basics/basics.js';

export const MapFlowUnit = z.enum(['kgPerS', 'gPerS', 'kgPerH', 'lbPerMin', 'lbPerH']);
export type MapFlowUnit = z.infer<typeof MapFlowUnit>;

/** Reference air of a map: `gas-stand` 298 K and 100 kPa, `standard-day` 288.15 K and 101.325 kPa. */
export const MapAir = z.enum(['gas-stand', 'standard-day']);
export type MapAir = z.infer<typeof MapAir>;

/** One line of constant shaft speed, from surge to choke. */
export const MapLine = z
  .object({
    shaftSpeedRpm: z.number().positive(),
    flowsKgPerS: z.array(z.number()),
    pressureRatios: z.array(z.number()),
    efficiencyRatios: z.array(z.number()).nullable(),
  })
  .meta({ id: 'MapLine' });
export type MapLine = z.infer<typeof MapLine>;

const asEntered = {
  /** One row a point: columns `speed`, `flow`, `pressure ratio` and, if known, `efficiency`. */
  csv: z.string().min(1).max(200_000),
  flowUnit: MapFlowUnit,
  reference: MapAir,
  /** Where the points come from, as the workshop says it. */
  source: z.string().trim().max(200),
};

/** A compressor map as a person enters it. */
export const CompressorMapNew = z
  .object({ ...asEntered, source: asEntered.source.default('') })
  .meta({ id: 'CompressorMapNew' });
export type CompressorMapNew = z.infer<typeof CompressorMapNew>;

/** A compressor map on record: as it was entered, and as it was read. `revision` is the car's. */
export const CarCompressorMap = z
  .object({
    carId: Id,
    ...asEntered,
    lines: z.array(MapLine).min(2),
    pointCount: z.number().int(),
    revision: RecordRevision,
  })
  .meta({ id: 'CarCompressorMap' });
export type CarCompressorMap = z.infer<typeof CarCompressorMap>;

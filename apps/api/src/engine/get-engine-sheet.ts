import type { EnginePoint, EngineSheet, PresetUnderCeiling } from '@pullbook/contracts';
import type { Actor } from '../plumbing/actor.js';
import { loadPresets } from '../presets/load-presets.js';
import { ceilingOfCar, type BuiltCeiling } from './ceiling-of-car.js';
import { ceilingRows } from './ceiling-rows.js';
import { airOnRecord, engineWay } from './engine-air.js';
import { missingOf, readEngineInputs, type EngineInputs } from './engine-inputs.js';
import { enginePoint, type PointName } from './engine-point.js';
import { pullsOnMap } from './pulls-on-map.js';
import { loadCeilingCar } from './load-ceiling-car.js';
import { mapOf, storedMapOf, type StoredMap } from './stored-map.js';

/**
 * All that follows from a car's engine data: the ceiling with the limit that binds, the way of air and fuel at targets
 * and ceilings, power as a band, and the pulls on the compressor map.
 *
 * @throws DomainError not-found
 */
export async function getEngineSheet({ db }: Actor, carId: string): Promise<EngineSheet> {
  const car = await loadCeilingCar(db, carId);
  const compressorMap = storedMapOf(car.storedMap);
  const inputs = readEngineInputs(car.mechanics);
  const ceiling = ceilingOfCar(car);
  const presets = await presetsUnder(db, carId, ceiling);
  const pulls = await pullsOnMap(db, carId, { inputs, map: mapOf(compressorMap) });
  return {
    carId,
    revision: car.revision,
    inputs: [...inputs.list],
    air: { ...airOnRecord(inputs), heightM: inputs.values.heightM ?? 0 },
    ceilingKpa: ceiling?.ceilingKpa ?? null,
    binds: ceiling?.binds.cause ?? null,
    limits: ceilingRows(car, ceiling),
    presets,
    missing: missingOf(inputs, ['displacementL', 'revLimitRpm']),
    points: await pointsOf(db, carId, { inputs, compressorMap, names: pointNames(presets, ceiling) }),
    map: compressorMap && {
      lines: compressorMap.lines,
      reference: compressorMap.reference,
      source: compressorMap.source,
    },
    pulls,
  };
}

async function presetsUnder(
  db: Actor['db'],
  carId: string,
  ceiling: BuiltCeiling | null,
): Promise<PresetUnderCeiling[]> {
  const presets = await loadPresets(db, { carId });
  return presets
    .filter(({ isReplaced }) => !isReplaced)
    .map(({ id, values: { name, slot, targetKpa, ceilingKpa } }) => {
      const headroomKpa = ceiling === null || ceilingKpa === null ? null : ceiling.ceilingKpa - ceilingKpa;
      return { presetId: id, name, slot, targetKpa, ceilingKpa, headroomKpa };
    });
}

function pointNames(presets: readonly PresetUnderCeiling[], ceiling: BuiltCeiling | null): PointName[] {
  const ofPresets = presets.flatMap(({ presetId, name, targetKpa, ceilingKpa }) => {
    const preset = { presetId, presetName: name };
    return [
      ...(targetKpa === null ? [] : [{ ...preset, at: 'target' as const, boostKpa: targetKpa }]),
      ...(ceilingKpa === null ? [] : [{ ...preset, at: 'ceiling' as const, boostKpa: ceilingKpa }]),
    ];
  });
  if (ceiling === null) return ofPresets;
  const limit = { presetId: null, presetName: null, at: 'limit' as const, boostKpa: ceiling.ceilingKpa };
  return [...ofPresets, limit];
}

interface PointsWanted {
  readonly inputs: EngineInputs;
  readonly compressorMap: StoredMap | null;
  readonly names: readonly PointName[];
}

async function pointsOf(
  db: Actor['db'],
  carId: string,
  { inputs, compressorMap, names }: PointsWanted,
): Promise<EnginePoint[]> {
  const way = engineWay(inputs, mapOf(compressorMap));
  if (way === null) return [];
  const { _min } = await db.pull.aggregate({
    where: { voidedAt: null, visit: { carId } },
    _min: { onsetRpm: true },
  });
  // Below its onset the engine does not make that boost; where no pull tells it, from half the rev limit on.
  const fromRpm = _min.onsetRpm ?? way.revLimitRpm / 2;
  return names.map((name) => enginePoint(way, inputs, name, fromRpm));
}

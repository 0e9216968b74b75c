import type { CarCompressorMap, CompressorMapNew } from '@pullbook/contracts';
import { findMapFaults, readCompressorMap } from '@pullbook/tuning-math';
import type { Actor } from '../plumbing/actor.js';
import { DomainError } from '../plumbing/domain-error.js';
import { changedMeanwhile } from '../plumbing/etags.js';
import { recordEvent } from '../plumbing/record-event.js';
import { getCompressorMap } from './get-compressor-map.js';
import type { StoredMap } from './stored-map.js';

/**
 * Reads a compressor map and keeps it with the car, in place of an older one.
 *
 * @param revision of the car, as the sender has seen it
 * @throws DomainError not-found, changed-meanwhile, invalid-request naming each row that cannot be read
 */
export function setCompressorMap(
  actor: Actor,
  carId: string,
  revision: number,
  input: CompressorMapNew,
): Promise<CarCompressorMap> {
  const map = readMap(input);
  return actor.db.$transaction(async (tx) => {
    const car = await tx.car.findUnique({ where: { id: carId }, select: { plate: true } });
    if (car === null) throw new DomainError('not-found', 'there is no car of this id');
    const { count } = await tx.car.updateMany({
      where: { id: carId, revision },
      data: { compressorMap: map, revision: { increment: 1 } },
    });
    if (count === 0) throw changedMeanwhile('car');
    await recordEvent(tx, actor, {
      action: 'compressor-map-set',
      noun: 'car',
      recordId: carId,
      summary: `entered the compressor map of ${car.plate}`,
      detail: input,
    });
    return getCompressorMap(tx, carId);
  });
}

/** More than that nobody reads at once. */
const MOST_FAULTS = 20;

function readMap({ csv, flowUnit, reference, source }: CompressorMapNew): StoredMap {
  const faults = findMapFaults(csv, { flowUnit, reference });
  const [first] = faults;
  if (first !== undefined) {
    const errors = faults.slice(0, MOST_FAULTS).map(({ argument, allowed, value }) => {
      const where = argument === 'csv' ? 'the file' : argument;
      return { field: 'csv', message: `${where}: has ${allowed}, got ${String(value)}` };
    });
    throw new DomainError('invalid-request', 'this is no compressor map that can be read', { errors });
  }
  const { lines } = readCompressorMap(csv, { flowUnit, reference });
  return {
    csv,
    flowUnit,
    reference,
    source,
    lines: lines.map(({ shaftSpeedRpm, flowsKgPerS, pressureRatios, efficiencyRatios }) => ({
      shaftSpeedRpm,
      flowsKgPerS: [...flowsKgPerS],
      pressureRatios: [...pressureRatios],
      efficiencyRatios: efficiencyRatios && [...efficiencyRatios],
    })),
  };
}

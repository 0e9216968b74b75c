import { runPieces } from '../threads/run-pieces.js';
import { carsOf, type Lot } from './run-lot.js';
import type { WorkOrder } from './tune-worker.js';
import type { CarlessRun, TuningRun } from './tune-car.js';

/** Cars sent to a thread at a time. */
const CARS_AT_A_TIME = 25;

interface Piece extends WorkOrder {
  readonly lotIndex: number;
}

/**
 * Tunes every lot on several threads. Each car is tuned by itself and put back in its place, so that the result is
 * the same for any number of threads (the times of decisions are not).
 */
export async function runLots(lots: readonly Lot[], threads: number): Promise<TuningRun[][]> {
  const cars = lots.map(carsOf);
  const pieces = lots.flatMap((lot, lotIndex): Piece[] => {
    const count = cars[lotIndex]?.length ?? 0;
    return Array.from({ length: Math.ceil(count / CARS_AT_A_TIME) }, (_, piece) => ({
      lot,
      lotIndex,
      from: piece * CARS_AT_A_TIME,
      to: Math.min((piece + 1) * CARS_AT_A_TIME, count),
    }));
  });
  const runs = cars.map((ofLot): TuningRun[] => new Array<TuningRun>(ofLot.length));
  const module = new URL('./tune-worker.ts', import.meta.url);
  const answers = await runPieces<Piece, readonly CarlessRun[]>(pieces, module, threads);
  pieces.forEach(({ lotIndex, from }, piece) => {
    answers[piece]?.forEach((run, index) => {
      const car = cars[lotIndex]?.[from + index];
      const lot = runs[lotIndex];
      if (car && lot) lot[from + index] = { ...run, car };
    });
  });
  return runs;
}

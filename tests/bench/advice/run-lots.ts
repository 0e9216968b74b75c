import { Worker } from 'node:worker_threads';
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
  const place = ({ lotIndex, from }: Piece, sent: readonly CarlessRun[]): void =>
    sent.forEach((run, index) => {
      const car = cars[lotIndex]?.[from + index];
      const lot = runs[lotIndex];
      if (car && lot) lot[from + index] = { ...run, car };
    });
  const waiting = [...pieces];
  await Promise.all(Array.from({ length: threads }, () => workThrough(waiting, place)));
  return runs;
}

/** One thread that takes piece after piece until none waits. */
async function workThrough(
  waiting: Piece[],
  place: (piece: Piece, sent: readonly CarlessRun[]) => void,
): Promise<void> {
  const worker = new Worker(new URL('./start-worker.mjs', import.meta.url), {
    execArgv: ['--conditions=pullbook-source'],
  });
  try {
    for (let piece = waiting.shift(); piece; piece = waiting.shift()) place(piece, await ask(worker, piece));
  } finally {
    await worker.terminate();
  }
}

function ask(worker: Worker, { lot, from, to }: Piece): Promise<readonly CarlessRun[]> {
  return new Promise((resolve, reject) => {
    worker.once('error', reject);
    worker.once('message', (sent: readonly CarlessRun[]) => {
      worker.off('error', reject);
      resolve(sent);
    });
    worker.postMessage({ lot, from, to });
  });
}

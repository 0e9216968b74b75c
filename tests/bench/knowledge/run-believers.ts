import type { CarlessRun, TuningRun } from '../advice/tune-car.js';
import { runPieces } from '../threads/run-pieces.js';
import type { BelieveOrder } from './believe-worker.js';
import type { Who } from './believers.js';
import { healthyCars, type HealthyOrder } from './healthy-cars.js';

/** Cars sent to a thread at a time. */
const CARS_AT_A_TIME = 5;

/** Lets each tune the same cars, on several threads; the result is the same for any number of threads. */
export async function runBelievers(
  whos: readonly Who[],
  order: HealthyOrder,
  threads: number,
): Promise<TuningRun[][]> {
  const cars = healthyCars(order);
  const starts = Array.from(
    { length: Math.ceil(cars.length / CARS_AT_A_TIME) },
    (_, piece) => piece * CARS_AT_A_TIME,
  );
  const pieces = whos.flatMap((who) =>
    starts.map((from): BelieveOrder => ({ who, order, from, to: from + CARS_AT_A_TIME })),
  );
  const module = new URL('./believe-worker.ts', import.meta.url);
  const answers = await runPieces<BelieveOrder, readonly CarlessRun[]>(pieces, module, threads);
  return whos.map((_, index) =>
    answers
      .slice(index * starts.length, (index + 1) * starts.length)
      .flat()
      .flatMap((run, position): TuningRun[] => {
        const car = cars[position];
        return car ? [{ ...run, car }] : [];
      }),
  );
}

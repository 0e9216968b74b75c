// A thread of the bench: tunes the cars that it is told and sends back how it went.
import { parentPort } from 'node:worker_threads';
import type { ShapeCar } from '@pullbook/practice-car';
import { carsOf, runOne, type Lot } from './run-lot.js';

export interface WorkOrder {
  readonly lot: Lot;
  /** Positions of the cars in the lot: from, and up to but without. */
  readonly from: number;
  readonly to: number;
}

const drawn = new Map<string, ShapeCar[]>();

function cars(lot: Lot): ShapeCar[] {
  const key = JSON.stringify({ ...lot, method: '' });
  const known = drawn.get(key) ?? carsOf(lot);
  drawn.set(key, known);
  return known;
}

parentPort?.on('message', ({ lot, from, to }: WorkOrder) => {
  const runs = cars(lot)
    .slice(from, to)
    .map((car) => runOne(lot, car));
  parentPort?.postMessage(runs);
});

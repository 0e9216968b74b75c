// A thread of the bench: tunes the cars that it is told and sends back how it went.
import { parentPort } from 'node:worker_threads';
import { tuneCar } from '../advice/tune-car.js';
import { methodOf, type Who } from './believers.js';
import { healthyCars, type HealthyOrder } from './healthy-cars.js';

/** Who is to tune which cars of an order: from, and up to but without. */
export interface BelieveOrder {
  readonly who: Who;
  readonly order: HealthyOrder;
  readonly from: number;
  readonly to: number;
}

parentPort?.on('message', ({ who, order, from, to }: BelieveOrder) => {
  const cars = healthyCars(order).slice(from, to);
  parentPort?.postMessage(cars.map((car) => tuneCar(car, methodOf(who, car, order.set))));
});

// A thread of the bench: measures the seeds that it is told and sends back their rows.
import { parentPort } from 'node:worker_threads';
import { TASKS, type Piece } from './tasks.js';

parentPort?.on('message', ({ task, from, to }: Piece) => {
  const seeds = Array.from({ length: to - from + 1 }, (_, index) => from + index);
  parentPort?.postMessage(seeds.map((seed): unknown => TASKS[task](seed)));
});

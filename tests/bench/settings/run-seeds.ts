import { Worker } from 'node:worker_threads';
import { TASKS, type Piece, type TaskName, type TaskRows } from './tasks.js';

/** Seeds sent to a thread at a time. */
const SEEDS_AT_A_TIME = 10;

/** Seeds to measure for each part: from, and how many. */
export type SeedPlan = Readonly<Record<TaskName, { readonly from: number; readonly count: number }>>;

/** Measures every part on several threads; the result is the same for any number of threads. */
export async function runSeeds(plan: SeedPlan, threads: number): Promise<TaskRows> {
  const pieces = (Object.keys(TASKS) as TaskName[]).flatMap((task) => piecesOf(task, plan[task]));
  const answers = new Map<Piece, readonly unknown[]>();
  const waiting = [...pieces];
  await Promise.all(Array.from({ length: threads }, () => workThrough(waiting, answers)));
  const rows = new Map<TaskName, unknown[]>();
  for (const piece of pieces)
    rows.set(piece.task, [...(rows.get(piece.task) ?? []), ...(answers.get(piece) ?? [])]);
  return Object.fromEntries(rows) as TaskRows;
}

function piecesOf(task: TaskName, { from, count }: SeedPlan[TaskName]): Piece[] {
  return Array.from({ length: Math.ceil(count / SEEDS_AT_A_TIME) }, (_, piece) => {
    const first = from + piece * SEEDS_AT_A_TIME;
    return { task, from: first, to: Math.min(first + SEEDS_AT_A_TIME, from + count) - 1 };
  });
}

/** One thread that takes piece after piece until none waits. */
async function workThrough(waiting: Piece[], answers: Map<Piece, readonly unknown[]>): Promise<void> {
  const worker = new Worker(new URL('./start-worker.mjs', import.meta.url), {
    execArgv: ['--conditions=pullbook-source'],
  });
  try {
    for (let piece = waiting.shift(); piece; piece = waiting.shift())
      answers.set(piece, await ask(worker, piece));
  } finally {
    await worker.terminate();
  }
}

function ask(worker: Worker, piece: Piece): Promise<readonly unknown[]> {
  return new Promise((resolve, reject) => {
    worker.once('error', reject);
    worker.once('message', (sent: readonly unknown[]) => {
      worker.off('error', reject);
      resolve(sent);
    });
    worker.postMessage(piece);
  });
}

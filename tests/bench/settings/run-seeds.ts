import { runPieces } from '../threads/run-pieces.js';
import { TASKS, type Piece, type TaskName, type TaskRows } from './tasks.js';

/** Seeds sent to a thread at a time. */
const SEEDS_AT_A_TIME = 10;

/** Seeds to measure for each part: from, and how many. */
export type SeedPlan = Readonly<Record<TaskName, { readonly from: number; readonly count: number }>>;

/** Measures every part on several threads; the result is the same for any number of threads. */
export async function runSeeds(plan: SeedPlan, threads: number): Promise<TaskRows> {
  const pieces = (Object.keys(TASKS) as TaskName[]).flatMap((task) => piecesOf(task, plan[task]));
  const module = new URL('./seed-worker.ts', import.meta.url);
  const answers = await runPieces<Piece, readonly unknown[]>(pieces, module, threads);
  const rows = new Map<TaskName, unknown[]>();
  pieces.forEach(({ task }, index) => {
    rows.set(task, [...(rows.get(task) ?? []), ...(answers[index] ?? [])]);
  });
  return Object.fromEntries(rows) as TaskRows;
}

function piecesOf(task: TaskName, { from, count }: SeedPlan[TaskName]): Piece[] {
  return Array.from({ length: Math.ceil(count / SEEDS_AT_A_TIME) }, (_, piece) => {
    const first = from + piece * SEEDS_AT_A_TIME;
    return { task, from: first, to: Math.min(first + SEEDS_AT_A_TIME, from + count) - 1 };
  });
}

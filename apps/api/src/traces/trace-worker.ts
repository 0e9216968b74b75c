import { LogError } from '@pullbook/tuning-math';
import { parentPort, workerData } from 'node:worker_threads';
import { writeTraceFile, type TraceTask } from './write-trace-file.js';

/** What the worker tells: how far it is, and at last that it is done or why it cannot be. */
export type TraceNews =
  | { readonly share: number }
  | { readonly done: true }
  | { readonly unreadable: { readonly message: string } };

const tell = (news: TraceNews): void => parentPort?.postMessage(news);
/** Finer steps nobody sees. */
const LEAST_STEP = 0.02;

async function work(task: TraceTask): Promise<void> {
  let told = 0;
  try {
    await writeTraceFile(task, (share) => {
      if (share < told + LEAST_STEP) return;
      told = share;
      tell({ share });
    });
    tell({ done: true });
  } catch (error) {
    if (!(error instanceof LogError)) throw error;
    tell({ unreadable: { message: `${error.message}; ${error.hint}` } });
  }
}

await work(workerData as TraceTask);

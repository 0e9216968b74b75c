import { randomUUID } from 'node:crypto';
import { rename, rm } from 'node:fs/promises';
import { Worker } from 'node:worker_threads';
import { DomainError } from '../plumbing/domain-error.js';
import type { TraceNews } from './trace-worker.js';
import type { TraceTask } from './write-trace-file.js';

/** A trace file in the making. */
export interface TraceBuild {
  /** How much is done, 0 to 1. */
  share: number;
  /** Ends when the file is there. @throws DomainError log-unreadable */
  readonly made: Promise<void>;
}

const builds = new Map<string, TraceBuild>();
let queue: Promise<unknown> = Promise.resolve();

/**
 * Starts to make a trace file on a thread of its own, or joins the build that is under way. One at a time, so that
 * requests keep a core; written aside and renamed, so that none is ever half there.
 */
export function buildOffThread(task: TraceTask): TraceBuild {
  const underWay = builds.get(task.traceFile);
  if (underWay !== undefined) return underWay;
  const aside = `${task.traceFile}.${randomUUID()}.part`;
  const made = queue.then(async () => {
    try {
      await run({ ...task, traceFile: aside }, build);
      await rename(aside, task.traceFile);
    } finally {
      builds.delete(task.traceFile);
      await rm(aside, { force: true });
    }
  });
  const build: TraceBuild = { share: 0, made };
  builds.set(task.traceFile, build);
  // Whoever asked hears of a failure; the next build only waits for its turn.
  queue = made.catch(() => undefined);
  return build;
}

function run(task: TraceTask, build: TraceBuild): Promise<void> {
  return new Promise((resolve, reject) => {
    const worker = startWorker(task);
    worker.on('message', (news: TraceNews) => {
      if ('share' in news) build.share = news.share;
      else if ('done' in news) resolve();
      else {
        const { message } = news.unreadable;
        reject(new DomainError('log-unreadable', message, { errors: [{ field: 'id', message }] }));
      }
    });
    worker.once('error', reject);
    worker.once('exit', (code) => reject(new Error(`the traces ended without an answer (${code})`)));
  });
}

/** Built, the worker is JavaScript beside this file; run from source, it is TypeScript and needs a loader first. */
function startWorker(workerData: TraceTask): Worker {
  if (!import.meta.url.endsWith('.ts')) {
    return new Worker(new URL('./trace-worker.js', import.meta.url), { workerData });
  }
  const worker = new URL('./trace-worker.ts', import.meta.url).href;
  const script = `import('tsx/esm/api').then(({ tsImport }) => tsImport('${worker}', '${worker}'))`;
  return new Worker(script, { eval: true, workerData, execArgv: ['--conditions=pullbook-source'] });
}

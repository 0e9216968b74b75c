import { Worker } from 'node:worker_threads';
import { DomainError } from '../plumbing/domain-error.js';
import type { AnalysedLog, FileToAnalyse } from './analyse-file.js';
import type { AnalysisAnswer } from './analysis-worker.js';

/** Logs that are analysed at the same moment: one keeps a core free for requests on the smallest server. */
const MOST_AT_ONCE = 1;

let running = 0;
const waiting: (() => void)[] = [];

/**
 * Analyses a log on a thread of its own, so that requests are answered meanwhile; waits its turn behind others.
 * @throws DomainError log-unreadable, saying in plain words what is wrong with the file and what to do
 */
export async function analyseOffThread(task: FileToAnalyse): Promise<AnalysedLog> {
  await takeTurn();
  try {
    const answer = await ask(task);
    if ('analysed' in answer) return answer.analysed;
    const message = `${answer.unreadable.message}; ${answer.unreadable.hint}`;
    throw new DomainError('log-unreadable', message, { errors: [{ field: 'file', message }] });
  } finally {
    running -= 1;
    waiting.shift()?.();
  }
}

async function takeTurn(): Promise<void> {
  if (running >= MOST_AT_ONCE) await new Promise<void>((resolve) => waiting.push(resolve));
  running += 1;
}

function ask(task: FileToAnalyse): Promise<AnalysisAnswer> {
  return new Promise((resolve, reject) => {
    const worker = startWorker(task);
    worker.once('message', resolve);
    worker.once('error', reject);
    worker.once('exit', (code) => reject(new Error(`log analysis ended without an answer (${code})`)));
  });
}

/** Built, the worker is JavaScript beside this file; run from source, it is TypeScript and needs a loader first. */
function startWorker(workerData: FileToAnalyse): Worker {
  if (!import.meta.url.endsWith('.ts')) {
    return new Worker(new URL('./analysis-worker.js', import.meta.url), { workerData });
  }
  const worker = new URL('./analysis-worker.ts', import.meta.url).href;
  const script = `import('tsx/esm/api').then(({ tsImport }) => tsImport('${worker}', '${worker}'))`;
  return new Worker(script, { eval: true, workerData, execArgv: ['--conditions=pullbook-source'] });
}

import { Worker } from 'node:worker_threads';

/**
 * Has every piece worked on by several threads.
 *
 * @param module what a thread runs: it answers each message, a piece, with one message
 * @returns the answers in the order of the pieces, the same for any number of threads
 */
export async function runPieces<Piece, Answer>(
  pieces: readonly Piece[],
  module: URL,
  threads: number,
): Promise<Answer[]> {
  const answers = new Array<Answer>(pieces.length);
  const waiting = [...pieces.entries()];
  const workThrough = async (): Promise<void> => {
    const worker = new Worker(new URL('./start-worker.mjs', import.meta.url), {
      execArgv: ['--conditions=pullbook-source'],
      workerData: { module: module.href },
    });
    try {
      for (let next = waiting.shift(); next; next = waiting.shift())
        answers[next[0]] = await ask<Piece, Answer>(worker, next[1]);
    } finally {
      await worker.terminate();
    }
  };
  await Promise.all(Array.from({ length: threads }, workThrough));
  return answers;
}

function ask<Piece, Answer>(worker: Worker, piece: Piece): Promise<Answer> {
  return new Promise((resolve, reject) => {
    worker.once('error', reject);
    worker.once('message', (sent: Answer) => {
      worker.off('error', reject);
      resolve(sent);
    });
    worker.postMessage(piece);
  });
}

/** What a worker says to one question: how far it is, then the answer or what went wrong. */
type Said<Answer> =
  | { readonly id: number; readonly share: number }
  | { readonly id: number; readonly answer: Answer }
  | { readonly id: number; readonly fault: string };

interface Asker<Answer> {
  readonly resolve: (answer: Answer) => void;
  readonly reject: (error: Error) => void;
  readonly onProgress: ((share: number) => void) | undefined;
}

/** Asks the worker. @param onProgress told the share done, 0 to 1, where the worker tells it */
type Ask<Question extends object, Answer> = (
  question: Question,
  onProgress?: (share: number) => void,
) => Promise<Answer>;

/**
 * A line of questions and answers to a web worker, which starts with the first question and anew after it broke down.
 *
 * @param script address of the worker: to `{ id, ...question }` it posts what `Said` is
 * @param failure words for everybody who still waits when the worker breaks down
 */
export function workerLine<Question extends object, Answer>(
  script: string,
  failure: string,
): Ask<Question, Answer> {
  let worker: Worker | null = null;
  let lastId = 0;
  const waiting = new Map<number, Asker<Answer>>();

  const hear = ({ data }: MessageEvent<Said<Answer>>): void => {
    const asker = waiting.get(data.id);
    if ('share' in data) return asker?.onProgress?.(data.share);
    waiting.delete(data.id);
    if ('answer' in data) return asker?.resolve(data.answer);
    return asker?.reject(new Error(data.fault));
  };
  const giveUp = (): void => {
    worker = null;
    for (const { reject } of waiting.values()) reject(new Error(failure));
    waiting.clear();
  };
  const start = (): Worker => {
    const started = new Worker(script);
    started.onmessage = hear;
    started.onerror = giveUp;
    return started;
  };

  return (question, onProgress) => {
    const asked = (worker ??= start());
    lastId += 1;
    const id = lastId;
    return new Promise((resolve, reject) => {
      waiting.set(id, { resolve, reject, onProgress });
      asked.postMessage({ id, ...question });
    });
  };
}

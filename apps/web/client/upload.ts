import { NoAnswerError, UnreadableAnswerError } from './problem-error';
import { problemFrom, type Contract } from './request';

interface UploadOptions {
  readonly idempotencyKey: string;
  /** Share of the bytes sent so far, 0 to 1. */
  readonly onProgress: (share: number) => void;
}

/** Sends a file as text/csv. `fetch` cannot tell how much has gone out, so this is XMLHttpRequest's one place. */
export function uploadText<T>(
  path: string,
  file: File,
  schema: Contract<T>,
  options: UploadOptions,
): Promise<T> {
  return new Promise((resolve, reject) => {
    const request = new XMLHttpRequest();
    request.open('POST', `/api/v1${path}`);
    request.setRequestHeader('content-type', 'text/csv');
    request.setRequestHeader('idempotency-key', options.idempotencyKey);
    request.upload.onprogress = (event) => {
      if (event.lengthComputable) options.onProgress(event.loaded / event.total);
    };
    request.onerror = () => reject(new NoAnswerError());
    request.onload = () => {
      if (request.status >= 400) {
        reject(problemFrom(request.status, request.responseText));
        return;
      }
      const answer = readAnswer(schema, request.responseText);
      if (answer === null) reject(new UnreadableAnswerError(path));
      else resolve(answer.data);
    };
    request.send(file);
  });
}

function readAnswer<T>(schema: Contract<T>, text: string): { data: T } | null {
  try {
    const parsed = schema.safeParse(JSON.parse(text));
    return parsed.success ? { data: parsed.data } : null;
  } catch {
    return null;
  }
}

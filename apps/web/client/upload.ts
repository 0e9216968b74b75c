import { NoAnswerError, UnreadableAnswerError } from './problem-error';
import { parseJson } from './parse-json';
import { problemFrom } from './problem-from';

interface UploadOptions {
  readonly idempotencyKey: string;
  /** Share of the bytes sent so far, 0 to 1. */
  readonly onProgress: (share: number) => void;
}

/** Sends a file as text/csv. `fetch` cannot tell how much has gone out, so this is XMLHttpRequest's one place. */
export function uploadText<T>(path: string, file: File, options: UploadOptions): Promise<T> {
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
      const answer = parseJson(request.responseText);
      if (answer === null) reject(new UnreadableAnswerError(path));
      else resolve(answer as T);
    };
    request.send(file);
  });
}

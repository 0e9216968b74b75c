import { NoAnswerError } from './problem-error';
import { problemFrom } from './problem-from';

interface PartsOptions {
  /** Share of the bytes that the server has, 0 to 1; starts above 0 where an earlier try goes on. */
  readonly onProgress: (share: number) => void;
  /** How long tries go on. */
  readonly patience: keyof typeof retryDelaysMs;
  readonly signal?: AbortSignal;
}

/** Below what proxies commonly let through in one request. */
const partBytes = 8 * 1024 * 1024;
/** Pauses before each further try, ms. `short`: for a file that is kept elsewhere if it does not get through. */
const retryDelaysMs = {
  short: [0, 1000, 3000, 5000],
  /** A car drives out of reach and back: tries go on for some minutes before a person is asked. */
  long: [0, 1000, 3000, 5000, 10_000, 20_000, 30_000, 60_000, 60_000, 60_000],
} as const;

/**
 * Sends a file in parts (tus protocol 1.0). What the server has already of this very file, from a try that broke off
 * or before the page was loaded anew, is not sent again.
 *
 * @returns the id of the upload, once the server has all of it
 * @throws ProblemError for a refusal, NoAnswerError where the server stays out of reach
 */
export async function uploadInParts(
  file: File,
  { onProgress, patience, signal }: PartsOptions,
): Promise<string> {
  const { Upload, DetailedError } = await import('tus-js-client');
  return new Promise((resolve, reject) => {
    const upload = new Upload(file, {
      endpoint: '/api/v1/uploads',
      chunkSize: partBytes,
      retryDelays: [...retryDelaysMs[patience]],
      metadata: { filename: file.name.slice(-200), writtenMs: String(file.lastModified) },
      removeFingerprintOnSuccess: true,
      onProgress: (sent, all) => onProgress(all === 0 ? 1 : sent / all),
      onShouldRetry: (error) => isPassing(error.originalResponse?.getStatus() ?? 0),
      onSuccess: () => resolve(upload.url?.split('/').at(-1) ?? ''),
      onError: (error) => {
        const response = error instanceof DetailedError ? error.originalResponse : null;
        reject(
          response === null
            ? new NoAnswerError(error)
            : problemFrom(response.getStatus(), response.getBody()),
        );
      },
    });
    signal?.addEventListener('abort', () => {
      void upload.abort();
      reject(new DOMException('stopped', 'AbortError'));
    });
    void upload
      .findPreviousUploads()
      .then(([previous]) => previous && upload.resumeFromPreviousUpload(previous))
      .finally(() => upload.start());
  });
}

/** No answer, a server that is busy or starting, or another request that still holds the same upload. */
function isPassing(status: number): boolean {
  return status === 0 || status >= 500 || status === 409 || status === 423;
}

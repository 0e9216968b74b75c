import { NoAnswerError, UnreadableAnswerError } from './problem-error';
import { problemFrom } from './problem-from';

export interface SendOptions {
  readonly body?: unknown;
  /** Revision of the record that the change was made on; the server refuses if it has moved on. */
  readonly ifMatch?: number;
  readonly idempotencyKey?: string;
  readonly signal?: AbortSignal;
  /** Goes out even if the page is left or loaded anew meanwhile. */
  readonly keepalive?: boolean;
}

type Method = 'GET' | 'POST' | 'PUT' | 'PATCH' | 'DELETE';

/**
 * Asks `/api/v1`. The server holds every answer to its contract before it lets it out, so the answer is not weighed
 * again here: the schemas stay out of what a phone has to load.
 */
export async function get<T>(path: string, signal?: AbortSignal): Promise<T> {
  const response = await ask('GET', path, signal === undefined ? {} : { signal });
  return readJson<T>(path, response);
}

/** Asks `/api/v1` for bytes. */
export async function getBytes(path: string): Promise<ArrayBuffer> {
  const response = await ask('GET', path, {});
  return response.arrayBuffer();
}

/** Sends a change to `/api/v1` and gives back the answer. */
export async function send<T>(
  method: Exclude<Method, 'GET'>,
  path: string,
  options: SendOptions = {},
): Promise<T> {
  return readJson<T>(path, await ask(method, path, options));
}

/** Sends a change whose answer carries nothing to read. */
export async function sendOnly(
  method: Exclude<Method, 'GET'>,
  path: string,
  options: SendOptions = {},
): Promise<void> {
  await ask(method, path, options);
}

async function ask(method: Method, path: string, options: SendOptions): Promise<Response> {
  const response = await reach(method, path, options);
  if (response.ok) return response;
  throw problemFrom(response.status, await response.text().catch(() => ''));
}

async function reach(method: Method, path: string, options: SendOptions): Promise<Response> {
  const headers = new Headers({ accept: 'application/json' });
  if (options.body !== undefined) headers.set('content-type', 'application/json');
  if (options.ifMatch !== undefined) headers.set('if-match', `"${options.ifMatch}"`);
  if (options.idempotencyKey !== undefined) headers.set('idempotency-key', options.idempotencyKey);
  try {
    return await fetch(`/api/v1${path}`, {
      method,
      headers,
      credentials: 'same-origin',
      keepalive: options.keepalive === true,
      ...(options.body === undefined ? {} : { body: JSON.stringify(options.body) }),
      ...(options.signal === undefined ? {} : { signal: options.signal }),
    });
  } catch (cause) {
    if (options.signal?.aborted === true) throw cause;
    throw new NoAnswerError(cause);
  }
}

async function readJson<T>(path: string, response: Response): Promise<T> {
  const text = await response.text().catch((cause: unknown) => {
    throw new NoAnswerError(cause);
  });
  try {
    return JSON.parse(text) as T;
  } catch (cause) {
    throw new UnreadableAnswerError(path, cause);
  }
}

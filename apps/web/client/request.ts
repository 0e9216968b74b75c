import { Problem } from '@pullbook/contracts';
import { NoAnswerError, ProblemError, UnreadableAnswerError } from './problem-error';

/** A schema of `@pullbook/contracts`, as far as reading an answer needs it. */
export interface Contract<T> {
  safeParse: (value: unknown) => { success: true; data: T } | { success: false; error: Error };
}

export interface SendOptions {
  readonly body?: unknown;
  /** Revision of the record that the change was made on; the server refuses if it has moved on. */
  readonly ifMatch?: number;
  readonly idempotencyKey?: string;
  readonly signal?: AbortSignal;
}

type Method = 'GET' | 'POST' | 'PUT' | 'PATCH' | 'DELETE';

/** Asks `/api/v1` and reads the answer by its contract. */
export async function get<T>(path: string, schema: Contract<T>, signal?: AbortSignal): Promise<T> {
  const response = await ask('GET', path, signal === undefined ? {} : { signal });
  return readAs(schema, path, response);
}

/** Sends a change to `/api/v1` and reads the answer by its contract. */
export async function send<T>(
  method: Exclude<Method, 'GET'>,
  path: string,
  schema: Contract<T>,
  options: SendOptions = {},
): Promise<T> {
  return readAs(schema, path, await ask(method, path, options));
}

/** Sends a change whose answer carries nothing to read. */
export async function sendOnly(
  method: Exclude<Method, 'GET'>,
  path: string,
  options: SendOptions = {},
): Promise<void> {
  await ask(method, path, options);
}

/** The problem that a refused answer tells, or one of our own words where it tells none. */
export function problemFrom(status: number, text: string): ProblemError {
  const parsed = Problem.safeParse(parseJson(text));
  if (parsed.success) return new ProblemError(parsed.data);
  const title =
    status >= 500 ? 'The server had a fault. Nothing was saved; try again.' : 'The server refused this.';
  return new ProblemError({ type: 'about:blank', title, status, code: 'internal', requestId: '' });
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
      ...(options.body === undefined ? {} : { body: JSON.stringify(options.body) }),
      ...(options.signal === undefined ? {} : { signal: options.signal }),
    });
  } catch (cause) {
    if (options.signal?.aborted === true) throw cause;
    throw new NoAnswerError(cause);
  }
}

async function readAs<T>(schema: Contract<T>, path: string, response: Response): Promise<T> {
  const parsed = schema.safeParse(parseJson(await response.text()));
  if (!parsed.success) throw new UnreadableAnswerError(path, parsed.error);
  return parsed.data;
}

function parseJson(text: string): unknown {
  try {
    return JSON.parse(text) as unknown;
  } catch {
    return null;
  }
}

import type { Problem } from '@pullbook/contracts';
import { parseJson } from './parse-json';
import { ProblemError } from './problem-error';

/** The problem that a refused answer tells (RFC 9457), or one of our own words where it tells none. */
export function problemFrom(status: number, text: string): ProblemError {
  const told = parseJson(text);
  if (isProblem(told)) return new ProblemError(told);
  const title =
    status >= 500
      ? 'The server had a fault. Try again; if it stays, tell the owner.'
      : 'The server refused this.';
  return new ProblemError({ type: 'about:blank', title, status, code: 'internal', requestId: '' });
}

/** A proxy in between may answer with a page of its own. */
function isProblem(told: unknown): told is Problem {
  if (typeof told !== 'object' || told === null) return false;
  const { title, status, code } = told as Partial<Record<keyof Problem, unknown>>;
  return typeof title === 'string' && typeof status === 'number' && typeof code === 'string';
}

import { LogError } from '../log-error.js';

/** What is said of a file whose lines never end. */
export function endlessLine(): LogError {
  return new LogError(
    'no-table',
    'the log has a line of more than a million characters',
    'is a quotation mark left open, or is it no CSV?',
  );
}

import { LogError } from '../log-error.js';

/** What is said of a log without a pressure column; names the columns that it has. */
export function noPressure(headers: readonly string[]): LogError {
  const found =
    headers.length === 0
      ? 'the file has no header row'
      : `its columns are: ${headers.slice(0, 40).join(', ')}`;
  return new LogError(
    'no-pressure-channel',
    `no column of boost or manifold pressure was recognised; ${found}`,
    'say in the channel recipe which column is boost and in which unit',
  );
}

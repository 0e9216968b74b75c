'use client';

import { ProblemError } from '../../client/problem-error';
import { ButtonLink } from '../button/button';
import { ProblemNote } from './problem-note';

interface NotLoadedProps {
  /** What should stand here: `car`. */
  readonly what: string;
  readonly error: Error | null;
  readonly onRetry: () => void;
}

/** In place of a record that could not be fetched: whether there is none, or the server could not tell. */
export function NotLoaded({ what, error, onRetry }: NotLoadedProps) {
  if (error === null) return null;
  if (!isUnknown(error)) {
    return (
      <div className="stack">
        <h1>This {what} could not be loaded</h1>
        <ProblemNote error={error} onRetry={onRetry} />
      </div>
    );
  }
  return (
    <div className="stack" role="alert">
      <h1>No such {what} in this book</h1>
      <p>The address may be mistyped, or the record belongs to another workshop.</p>
      <p>
        <ButtonLink href="/board" kind="act">
          To the board
        </ButtonLink>
      </p>
    </div>
  );
}

/** Not there, or an address that no record can have. */
const isUnknown = (error: Error) =>
  error instanceof ProblemError &&
  (error.status === 404 || (error.status === 400 && error.fields.some(({ field }) => field === 'id')));

'use client';

import { ProblemError } from '../../client/problem-error';
import { sentence } from '../form/sentence';
import { Button } from '../button/button';
import { Mind } from './marks';

interface ProblemNoteProps {
  readonly error: Error | null;
  readonly onRetry?: (() => void) | undefined;
  readonly title?: string;
}

/** What went wrong, in the server's words, the named fields below it, and a way on. */
export function ProblemNote({ error, onRetry, title }: ProblemNoteProps) {
  if (error === null) return null;
  const named = error instanceof ProblemError ? error.fields : [];
  const fields = named.filter((one) => one.message !== error.message);
  return (
    <div role="alert">
      <Mind {...(title === undefined ? {} : { title })}>
        <p>{sentence(error.message)}</p>
        {fields.length === 0 ? null : (
          <ul>
            {fields.map((one) => (
              <li key={`${one.field}${one.message}`}>
                <b>{one.field}</b>: {one.message}
              </li>
            ))}
          </ul>
        )}
        {onRetry === undefined ? null : (
          <p>
            <Button onClick={onRetry}>Try again</Button>
          </p>
        )}
      </Mind>
    </div>
  );
}

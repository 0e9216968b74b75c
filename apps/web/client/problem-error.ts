import type { ErrorCode, FieldError, Problem } from '@pullbook/contracts';

/** What the server refused, in its own words, with the fields that it named. */
export class ProblemError extends Error {
  readonly status: number;
  readonly code: ErrorCode;
  readonly fields: readonly FieldError[];
  readonly requestId: string;

  constructor(problem: Problem) {
    super(problem.detail ?? problem.title);
    this.name = 'ProblemError';
    this.status = problem.status;
    this.code = problem.code;
    this.fields = problem.errors ?? [];
    this.requestId = problem.requestId;
  }
}

/** Nothing came back: no network, or the server is not there. Sending the same again is safe. */
export class NoAnswerError extends Error {
  constructor(cause?: unknown) {
    super('No answer from the workshop’s server. Nothing is lost: try again when the network is back.', {
      cause,
    });
    this.name = 'NoAnswerError';
  }
}

/** The server answered with something that the contract does not know. */
export class UnreadableAnswerError extends Error {
  constructor(path: string, cause?: unknown) {
    super(
      `The server’s answer to ${path} was not understood. Reload the page; if it stays, tell the owner.`,
      {
        cause,
      },
    );
    this.name = 'UnreadableAnswerError';
  }
}

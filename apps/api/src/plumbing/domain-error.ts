import type { ErrorCode, FieldError } from '@pullbook/contracts';

interface DomainErrorOptions {
  readonly errors?: readonly FieldError[];
  readonly cause?: unknown;
}

/** An expected outcome that is not success, told in words fit for the person who acted; knows nothing of HTTP. */
export class DomainError extends Error {
  readonly code: ErrorCode;
  readonly errors: readonly FieldError[];

  constructor(code: ErrorCode, userMessage: string, options: DomainErrorOptions = {}) {
    super(userMessage, { cause: options.cause });
    this.name = 'DomainError';
    this.code = code;
    this.errors = options.errors ?? [];
  }
}

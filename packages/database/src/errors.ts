/** Why the database cannot be used as it stands; the message is fit for the person who starts the server. */
export class DatabaseRefusedError extends Error {
  readonly reason: 'edited-migration' | 'failed-migration' | 'newer-database' | 'unknown-url';

  constructor(reason: DatabaseRefusedError['reason'], message: string) {
    super(message);
    this.name = 'DatabaseRefusedError';
    this.reason = reason;
  }
}

/** Somebody tried to go around the workshop's scope: a mistake of the program, never of a person. */
export class ScopeError extends Error {
  constructor(message: string) {
    super(message);
    this.name = 'ScopeError';
  }
}

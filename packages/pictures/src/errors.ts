/** A figure or size that cannot be drawn: which one, what it was, what would have done. */
export class NotDrawableError extends Error {
  readonly argument: string;
  readonly value: unknown;
  readonly allowed: string;

  constructor(argument: string, value: unknown, allowed: string) {
    super(`${argument} is ${String(value)}, allowed: ${allowed}`);
    this.name = 'NotDrawableError';
    this.argument = argument;
    this.value = value;
    this.allowed = allowed;
  }
}

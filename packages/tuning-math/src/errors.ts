/** What a tuning-math function was given and what it would have accepted. */
export interface ArgumentFault {
  readonly argument: string;
  readonly value: unknown;
  readonly allowed: string;
}

/** Bad input to a tuning-math function: names the argument, the value and what was allowed. */
export class ArgumentError extends Error {
  readonly argument: string;
  readonly value: unknown;
  readonly allowed: string;

  constructor(functionName: string, fault: ArgumentFault) {
    super(`${functionName} requires ${fault.argument} ${fault.allowed}, got ${String(fault.value)}`);
    this.name = new.target.name;
    this.argument = fault.argument;
    this.value = fault.value;
    this.allowed = fault.allowed;
  }
}

/** A number that is NaN or infinite where a finite one is needed. */
export class NotFiniteError extends ArgumentError {}

/** A finite number outside the interval that a function is defined on. */
export class OutOfRangeError extends ArgumentError {}

/** Two series that must be of one length are not. */
export class LengthMismatchError extends ArgumentError {}

/** Fewer data points than the computation needs. */
export class TooFewPointsError extends ArgumentError {}

/** A series that must rise strictly does not. */
export class NotStrictlyIncreasingError extends ArgumentError {}

/** A unit that the table of its quantity does not have. */
export class UnknownUnitError extends ArgumentError {}

/** Text from a person that cannot be read as a number; `allowed` says in plain words why. */
export class NotANumberTextError extends ArgumentError {}

/** A table from a file that lacks a column the computation needs. */
export class MissingColumnError extends ArgumentError {}

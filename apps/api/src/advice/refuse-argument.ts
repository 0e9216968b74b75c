import { ArgumentError } from '@pullbook/tuning-math';
import { DomainError } from '../plumbing/domain-error.js';

/**
 * Runs a computation of the tuning math for a caller of the API: where it refuses an argument, the caller is told the
 * field, the value and what was allowed.
 *
 * @throws DomainError invalid-request for bad input; anything else passes through
 */
export function refuseArgument<T>(compute: () => T): T {
  try {
    return compute();
  } catch (error) {
    if (!(error instanceof ArgumentError)) throw error;
    // `pulls[2].duty` in the math is `pulls.2.duty` to a caller of the API.
    const field = error.argument.replaceAll(/\[(\d+)\]/g, '.$1');
    const message = `must be ${error.allowed}, got ${String(error.value)}`;
    throw new DomainError('invalid-request', `${field} ${message}`, {
      errors: [{ field, message }],
      cause: error,
    });
  }
}

import type { ChannelReading, FieldError } from '@pullbook/contracts';
import { RECIPE_UNITS } from '@pullbook/tuning-math';
import { DomainError } from '../plumbing/domain-error.js';

/**
 * Refuses a reading that names a unit which its quantity cannot have, before any log is read by it.
 *
 * @param field path of the reading in the request
 * @throws DomainError invalid-request naming each such column
 */
export function checkReading({ columns }: ChannelReading, field: string): void {
  const errors = columns.flatMap(({ header, quantity, unit }, index): FieldError[] => {
    if (RECIPE_UNITS[quantity].includes(unit)) return [];
    const message = `"${header}" cannot be ${quantity} in "${unit}"; one of ${RECIPE_UNITS[quantity].join(', ')}`;
    return [{ field: `${field}.columns.${index}.unit`, message }];
  });
  if (errors.length === 0) return;
  throw new DomainError('invalid-request', errors[0]?.message ?? 'unknown unit', { errors });
}

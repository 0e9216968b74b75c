import type { Role } from '@pullbook/contracts';
import { DomainError } from '../plumbing/domain-error.js';

/** What the front desk may write of a preset; every other value is the tuner's and the owner's. */
const fieldsOfDesk: ReadonlySet<string> = new Set(['name', 'purpose', 'reason']);

/**
 * Refuses the front desk a change to a tuning value.
 *
 * @param fields names of the values that would change
 * @throws DomainError not-allowed, naming the fields
 */
export function checkMaySet(role: Role, fields: readonly string[]): void {
  if (role !== 'desk') return;
  const forbidden = fields.filter((field) => !fieldsOfDesk.has(field));
  if (forbidden.length === 0) return;
  throw new DomainError('not-allowed', 'the front desk may not change a tuning value; ask a tuner', {
    errors: forbidden.map((field) => ({ field, message: "is a tuner's or the owner's to change" })),
  });
}

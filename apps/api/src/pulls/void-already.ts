import type { Pull } from '@pullbook/database';
import { DomainError } from '../plumbing/domain-error.js';

/** The refusal where a pull is void: who voided it and why. */
export function voidAlready({ number, voidedBy, voidReason }: Pull): DomainError {
  const by = voidedBy === null ? '' : ` by ${voidedBy}`;
  return new DomainError('void-already', `pull ${number} was voided before${by}: ${voidReason ?? ''}`);
}

import { carFieldsOfDesk, noLimits, noMechanics } from '@pullbook/contracts';
import type { Actor } from '../plumbing/actor.js';
import { DomainError } from '../plumbing/domain-error.js';

/** What a car has before anybody measured or set anything: entering these sets nothing. */
const untouched: Record<string, unknown> = {
  mechanics: noMechanics,
  limits: noLimits,
  controllerId: null,
  buildCode: null,
};

/**
 * Whether the actor may set these fields of a car: the front desk takes a car in, but does not touch what tuning
 * rests on.
 * @throws DomainError not-allowed, naming the fields
 */
export function checkCarFields(actor: Actor, values: object): void {
  if (actor.role !== 'desk') return;
  const ofDesk: readonly string[] = carFieldsOfDesk;
  const refused = Object.entries(values)
    .filter(([field, value]) => value !== undefined && !ofDesk.includes(field))
    .filter(([field, value]) => JSON.stringify(value) !== JSON.stringify(untouched[field]))
    .map(([field]) => field);
  if (refused.length === 0) return;
  const errors = refused.map((field) => ({ field, message: 'is for a tuner or the owner to set' }));
  throw new DomainError('not-allowed', `a tuner or the owner sets: ${refused.join(', ')}`, { errors });
}

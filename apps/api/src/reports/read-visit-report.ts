import type { Report } from '@pullbook/contracts';
import { presentPaperHeader } from '../people/present-people.js';
import type { Actor } from '../plumbing/actor.js';
import { DomainError } from '../plumbing/domain-error.js';
import { reportOfSignOff } from './report-of-sign-off.js';

/**
 * The report of a signed-off visit, for the workshop's own people; not counted as an opening by the customer.
 *
 * @throws DomainError not-found, sign-off-incomplete for a visit that is not signed off
 */
export async function readVisitReport(actor: Actor, visitId: string): Promise<Report> {
  const visit = await actor.db.visit.findFirst({
    where: { id: visitId },
    include: { signOff: true, workshop: { select: { paperHeader: true } } },
  });
  if (visit === null) throw new DomainError('not-found', 'this workshop has no such visit');
  if (visit.signOff === null) {
    throw new DomainError(
      'sign-off-incomplete',
      `visit ${visit.number} is not signed off; there is no report yet`,
    );
  }
  return reportOfSignOff(visit.signOff, presentPaperHeader(visit.workshop));
}

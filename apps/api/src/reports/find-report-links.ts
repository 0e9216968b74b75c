import type { ReportLink } from '@pullbook/contracts';
import type { Actor } from '../plumbing/actor.js';
import { DomainError } from '../plumbing/domain-error.js';
import { presentReportLink } from './present-report-link.js';

/**
 * The report links of a visit, newest first, revoked ones too.
 *
 * @throws DomainError not-found
 */
export async function findReportLinks(actor: Actor, visitId: string): Promise<ReportLink[]> {
  const visit = await actor.db.visit.findFirst({ where: { id: visitId }, select: { id: true } });
  if (visit === null) throw new DomainError('not-found', 'this workshop has no such visit');
  const rows = await actor.db.reportLink.findMany({
    where: { visitId },
    orderBy: [{ createdAt: 'desc' }, { id: 'desc' }],
  });
  return rows.map(presentReportLink);
}

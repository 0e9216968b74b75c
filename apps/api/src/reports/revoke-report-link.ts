import type { ReportLink } from '@pullbook/contracts';
import type { Actor } from '../plumbing/actor.js';
import { DomainError } from '../plumbing/domain-error.js';
import { recordEvent } from '../plumbing/record-event.js';
import { presentReportLink } from './present-report-link.js';

/**
 * Ends a report link at once; ending one that has ended changes nothing.
 *
 * @throws DomainError not-found
 */
export async function revokeReportLink(actor: Actor, linkId: string): Promise<ReportLink> {
  const link = await actor.db.$transaction(async (tx) => {
    const { count } = await tx.reportLink.updateMany({
      where: { id: linkId, revokedAt: null },
      data: { revokedAt: actor.now() },
    });
    const row = await tx.reportLink.findFirst({ where: { id: linkId } });
    if (row === null) throw new DomainError('not-found', 'this workshop has no such report link');
    if (count === 0) return row;
    await recordEvent(tx, actor, {
      action: 'report-link-revoked',
      noun: 'report-link',
      recordId: linkId,
      summary: 'revoked a report link',
      detail: { visitId: row.visitId },
    });
    return row;
  });
  return presentReportLink(link);
}

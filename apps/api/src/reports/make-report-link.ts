import type { ReportLinkMade } from '@pullbook/contracts';
import type { z } from 'zod';
import type { Actor } from '../plumbing/actor.js';
import { DomainError } from '../plumbing/domain-error.js';
import { recordEvent } from '../plumbing/record-event.js';
import { presentReportLink } from './present-report-link.js';
import { hashSecret, newSecret } from '../plumbing/secrets.js';

/**
 * Makes a link with which a customer reads the report of a signed-off visit. The address is told once, here.
 *
 * @throws DomainError not-found, sign-off-incomplete for a visit that is not signed off
 */
export async function makeReportLink(actor: Actor, visitId: string): Promise<z.infer<typeof ReportLinkMade>> {
  const secret = newSecret();
  const link = await actor.db.$transaction(async (tx) => {
    const visit = await tx.visit.findFirst({ where: { id: visitId }, include: { signOff: true } });
    if (visit === null) throw new DomainError('not-found', 'this workshop has no such visit');
    if (visit.signOff === null) {
      throw new DomainError(
        'sign-off-incomplete',
        `visit ${visit.number} is not signed off; there is no report yet`,
      );
    }
    const row = await tx.reportLink.create({
      data: { visitId, secretHash: hashSecret(secret), createdAt: actor.now() },
    });
    await recordEvent(tx, actor, {
      action: 'report-link-made',
      noun: 'report-link',
      recordId: row.id,
      summary: `made a report link for visit ${visit.number}`,
      detail: { visitId },
    });
    return row;
  });
  return { ...presentReportLink(link), url: `/r/${secret}` };
}

import type { Report } from '@pullbook/contracts';
import type { PrismaClient } from '@pullbook/database';
import { presentPaperHeader } from '../people/present-people.js';
import { DomainError } from '../plumbing/domain-error.js';
import { hashSecret } from '../plumbing/secrets.js';
import { reportOfSignOff } from './report-of-sign-off.js';

/**
 * The report behind a link's secret, for whoever holds it: from the sealed text and nothing else. Each opening is
 * counted.
 *
 * @param database sees every workshop's rows: the secret alone says whose report it is
 * @throws DomainError not-found for a secret that never was one, gone for a revoked one
 */
export async function readReport(database: PrismaClient, secret: string): Promise<Report> {
  const link = await database.reportLink.findUnique({
    where: { secretHash: hashSecret(secret) },
    include: { visit: { include: { signOff: true, workshop: { select: { paperHeader: true } } } } },
  });
  const signOff = link?.visit.signOff ?? null;
  if (link === null || signOff === null)
    throw new DomainError('not-found', 'there is no report at this address');
  if (link.revokedAt !== null) {
    throw new DomainError('gone', 'the workshop has withdrawn this report; ask there for a new link');
  }
  await database.reportLink.update({ where: { id: link.id }, data: { openedCount: { increment: 1 } } });
  return reportOfSignOff(signOff, presentPaperHeader(link.visit.workshop));
}

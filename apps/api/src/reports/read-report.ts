import { cautionsForDriving, type Report } from '@pullbook/contracts';
import type { PrismaClient } from '@pullbook/database';
import { DomainError } from '../plumbing/domain-error.js';
import { sealHolds } from '../sign-off/seal.js';
import { SealedContent } from '../sign-off/sealed-content.js';
import { hashSecret } from '../plumbing/secrets.js';

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
    include: { visit: { include: { signOff: true } } },
  });
  const signOff = link?.visit.signOff ?? null;
  if (link === null || signOff === null)
    throw new DomainError('not-found', 'there is no report at this address');
  if (link.revokedAt !== null) {
    throw new DomainError('gone', 'the workshop has withdrawn this report; ask there for a new link');
  }
  await database.reportLink.update({ where: { id: link.id }, data: { openedCount: { increment: 1 } } });
  const sealed = SealedContent.parse(JSON.parse(signOff.sealedText));
  return {
    workshopName: sealed.workshop.name,
    units: sealed.workshop.units,
    visitNumber: sealed.visit.number,
    plate: sealed.car.plate,
    model: sealed.car.model,
    presets: sealed.presets,
    cautions: [...cautionsForDriving],
    signedName: sealed.signedName,
    signedAt: sealed.signedAt,
    sealSha256: signOff.sealSha256,
    sealHolds: sealHolds(signOff),
  };
}

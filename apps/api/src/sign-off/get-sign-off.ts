import { signOffKeys, type SignOff } from '@pullbook/contracts';
import { readAdviceRules } from '../advice/read-advice-rules.js';
import type { Actor } from '../plumbing/actor.js';
import { DomainError } from '../plumbing/domain-error.js';
import { loadEvidence } from './load-evidence.js';
import { sealHolds } from './seal.js';
import { SealedContent } from './sealed-content.js';
import { signOffQuestions } from './sign-off-questions.js';

/**
 * The sign-off of a visit: while open, the empty checklist and what the data say so far; once sealed, what the sealed
 * text says and whether its seal still holds.
 *
 * @throws DomainError not-found
 */
export async function getSignOff(actor: Actor, visitId: string): Promise<SignOff> {
  const visit = await actor.db.visit.findFirst({ where: { id: visitId }, include: { signOff: true } });
  if (visit === null) throw new DomainError('not-found', 'this workshop has no such visit');
  const { signOff } = visit;
  if (signOff !== null) {
    const { items, presets } = SealedContent.parse(JSON.parse(signOff.sealedText));
    return {
      visitId,
      state: 'sealed',
      items,
      presets,
      signedName: signOff.signedName,
      signedBy: signOff.signedBy,
      signedAt: signOff.signedAt.toISOString(),
      sealSha256: signOff.sealSha256,
      sealHolds: sealHolds(signOff),
    };
  }
  return {
    visitId,
    state: 'open',
    items: signOffKeys.map((key) => ({ key, question: signOffQuestions[key], done: false, note: '' })),
    presets: await loadEvidence(actor.db, visit, await readAdviceRules(actor)),
    signedName: null,
    signedBy: null,
    signedAt: null,
    sealSha256: null,
    sealHolds: null,
  };
}

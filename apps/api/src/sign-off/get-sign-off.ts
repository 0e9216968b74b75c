import type { SignOff } from '@pullbook/contracts';
import { readAdviceRules } from '../advice/read-advice-rules.js';
import { askItem } from '../checklists/ask-item.js';
import { readChecklist } from '../checklists/read-checklist.js';
import type { Actor } from '../plumbing/actor.js';
import { DomainError } from '../plumbing/domain-error.js';
import { loadEvidence } from './load-evidence.js';
import { sealHolds } from './seal.js';
import { SealedContent } from './sealed-content.js';

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
    const { items, presets, checklistRevision } = SealedContent.parse(JSON.parse(signOff.sealedText));
    return {
      visitId,
      state: 'sealed',
      items,
      checklistRevision,
      presets,
      signedName: signOff.signedName,
      signedBy: signOff.signedBy,
      signedAt: signOff.signedAt.toISOString(),
      sealSha256: signOff.sealSha256,
      sealHolds: sealHolds(signOff),
    };
  }
  const checklist = await readChecklist(actor.db, actor.workshopId);
  return {
    visitId,
    state: 'open',
    items: checklist.items.map((item) => ({ ...askItem(item), done: false, note: '' })),
    checklistRevision: checklist.revision,
    presets: await loadEvidence(actor.db, visit, await readAdviceRules(actor)),
    signedName: null,
    signedBy: null,
    signedAt: null,
    sealSha256: null,
    sealHolds: null,
  };
}

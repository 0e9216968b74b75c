import {
  closedStages,
  type PresetEvidence,
  type SignOff,
  type SignOffChecklist,
  type SignOffNew,
} from '@pullbook/contracts';
import type { WorkshopTransaction } from '@pullbook/database';
import { readAdviceRules } from '../advice/read-advice-rules.js';
import { askItem } from '../checklists/ask-item.js';
import { readChecklist } from '../checklists/read-checklist.js';
import { refreshDrift } from '../outlook/refresh-drift.js';
import type { Actor } from '../plumbing/actor.js';
import { DomainError } from '../plumbing/domain-error.js';
import { recordEvent } from '../plumbing/record-event.js';
import { loadPreset } from '../presets/load-presets.js';
import { enterStage } from '../tuning-sessions/enter-stage.js';
import { holdVisit, type OpenVisit } from '../tuning-sessions/hold-open-visit.js';
import { checkSignOff } from './check-sign-off.js';
import { gatherContent } from './gather-content.js';
import { getSignOff } from './get-sign-off.js';
import { loadEvidence } from './load-evidence.js';
import { sealContent } from './seal.js';

/**
 * Signs a visit off: seals what it covers, marks the covered presets and moves the visit to ready. All of it or
 * nothing; from then on nothing in the visit can be changed.
 *
 * @throws DomainError not-found, already-signed, visit-closed, and the refusals of `checkSignOff`
 */
export async function signVisit(actor: Actor, visitId: string, input: SignOffNew): Promise<SignOff> {
  const rules = await readAdviceRules(actor);
  await actor.db.$transaction(async (tx) => {
    const visit = await holdVisit(tx, visitId);
    if (visit.isSealed)
      throw new DomainError('already-signed', `visit ${visit.number} is signed off already`);
    if (closedStages.includes(visit.stage)) {
      throw new DomainError(
        'visit-closed',
        `visit ${visit.number} is ${visit.stage}; take it back on test first`,
      );
    }
    const checklist = await readChecklist(tx, actor.workshopId);
    const covered = checkSignOff(input, { evidence: await loadEvidence(tx, visit, rules), checklist });
    await seal(tx, actor, visit, { covered, input, checklist });
    for (const { presetId } of covered) await refreshDrift(tx, actor, await loadPreset(tx, presetId));
    await enterStage(tx, actor, visit, { stage: 'ready', note: `signed off by ${input.signedName}` });
  });
  return getSignOff(actor, visitId);
}

/** A sign-off that has nothing missing. */
interface Complete {
  readonly covered: PresetEvidence[];
  readonly input: SignOffNew;
  readonly checklist: SignOffChecklist;
}

async function seal(
  tx: WorkshopTransaction,
  actor: Actor,
  visit: OpenVisit,
  { covered, input, checklist }: Complete,
): Promise<void> {
  const notes = new Map(input.items.map((item) => [item.key, item.note]));
  const signedAt = actor.now();
  const content = await gatherContent(tx, actor, visit, {
    presets: covered,
    items: checklist.items.map((item) => ({
      ...askItem(item),
      done: true,
      note: notes.get(item.key) ?? '',
    })),
    checklistRevision: checklist.revision,
    signedName: input.signedName,
    signedBy: actor.name,
    signedAt: signedAt.toISOString(),
  });
  const sealed = sealContent(content);
  const { signedName } = input;
  await tx.signOff.create({
    data: { visitId: visit.id, ...sealed, signedName, signedBy: actor.name, signedAt },
  });
  for (const { presetId, revision } of covered) {
    await tx.preset.update({ where: { id: presetId }, data: { signedOffRevision: revision } });
  }
  await recordEvent(tx, actor, {
    action: 'visit-signed-off',
    noun: 'sign-off',
    recordId: visit.id,
    summary: `signed off visit ${visit.number} with ${covered.map(({ name }) => name).join(', ')}`,
    detail: { sealSha256: sealed.sealSha256, presetIds: covered.map(({ presetId }) => presetId) },
  });
}

import type { TuningSession, TuningSessionChange } from '@pullbook/contracts';
import type { WorkshopTransaction } from '@pullbook/database';
import type { z } from 'zod';
import { refreshDrift } from '../outlook/refresh-drift.js';
import type { Actor } from '../plumbing/actor.js';
import { recordEvent } from '../plumbing/record-event.js';
import { loadPreset } from '../presets/load-presets.js';
import { claimSession } from './claim-session.js';
import { getSession } from './get-session.js';
import { holdOpenVisit } from './hold-open-visit.js';
import { loadSession } from './load-session.js';

/**
 * Changes place, crew, fuel or air of a tuning session.
 *
 * @param expectedRevision the revision that the change was made on
 * @throws DomainError not-found, changed-meanwhile, visit-closed
 */
export async function changeSession(
  actor: Actor,
  sessionId: string,
  expectedRevision: number,
  change: z.infer<typeof TuningSessionChange>,
): Promise<TuningSession> {
  const { visit, number } = await loadSession(actor.db, sessionId);
  const data = Object.fromEntries(Object.entries(change).filter(([, value]) => value !== undefined));
  await actor.db.$transaction(async (tx) => {
    await holdOpenVisit(tx, visit.id);
    await claimSession(tx, { sessionId, expectedRevision }, data);
    await recordEvent(tx, actor, {
      action: 'tuning-session-changed',
      noun: 'tuning-session',
      recordId: sessionId,
      summary: `changed ${Object.keys(data).join(', ')} of tuning session ${number}`,
      detail: data,
    });
    if (change.air !== undefined) await refreshDriftOf(tx, actor, sessionId);
  });
  return getSession(actor, sessionId);
}

/** Other air makes other conditions of every preset that was pulled in the session. */
async function refreshDriftOf(tx: WorkshopTransaction, actor: Actor, sessionId: string): Promise<void> {
  const pulled = await tx.pull.findMany({
    where: { tuningSessionId: sessionId },
    distinct: ['presetId'],
    orderBy: { presetId: 'asc' },
    select: { presetId: true },
  });
  for (const { presetId } of pulled) await refreshDrift(tx, actor, await loadPreset(tx, presetId));
}

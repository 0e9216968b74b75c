import type { Pull, PullNew } from '@pullbook/contracts';
import { readAdviceRules } from '../advice/read-advice-rules.js';
import { refreshDrift } from '../outlook/refresh-drift.js';
import type { Actor } from '../plumbing/actor.js';
import { holdOpenVisit } from '../tuning-sessions/hold-open-visit.js';
import { loadSession } from '../tuning-sessions/load-session.js';
import { visitOfSession } from '../tuning-sessions/visit-of-session.js';
import { preparePull } from './prepare-pull.js';
import { writePull, type DrivenPull } from './write-pull.js';

/** A recorded pull and the visit that it belongs to. */
export interface RecordedPull {
  readonly pull: Pull;
  readonly visitId: string;
}

/**
 * Writes a pull into the book as it was driven: past the ceiling or over the step limit too, with a warning. Two at
 * the same moment get two numbers.
 *
 * @throws DomainError visit-closed, and the refusals of `preparePull`
 */
export async function recordPull(actor: Actor, sessionId: string, input: PullNew): Promise<RecordedPull> {
  const visitId = await visitOfSession(actor.db, sessionId);
  const rules = await readAdviceRules(actor);
  const pull = await actor.db.$transaction(async (tx) => {
    await holdOpenVisit(tx, visitId);
    const session = await loadSession(tx, sessionId);
    const goal = await preparePull(tx, session, input);
    const written = await writePull(
      tx,
      actor,
      { session, goal, rules },
      {
        dutyPct: input.dutyPct,
        holdPct: input.holdPct,
        correctionStrength: input.correctionStrength,
        overrideOn: input.overrideOn,
        heldForS: input.heldForS,
        peakKpa: input.peakKpa,
        heatSoaked: input.heatSoaked,
        note: input.note,
        measured: typedFigures(input),
        usable: true,
        reasons: [],
        from: null,
        recordedAt: input.recordedAt === undefined ? actor.now() : new Date(input.recordedAt),
      },
    );
    await refreshDrift(tx, actor, goal.preset);
    return written;
  });
  return { pull, visitId };
}

/** What a person read off: overshoot follows from peak and settled boost. */
function typedFigures({ gear, peakKpa, settledKpa, riseTimeS, onsetRpm }: PullNew): DrivenPull['measured'] {
  const overshootPct = settledKpa === null ? null : (100 * (peakKpa - settledKpa)) / settledKpa;
  return { gear, settledKpa, riseTimeS, onsetRpm, overshootPct };
}

import type { FoundPull, LogConfirm, Pull } from '@pullbook/contracts';
import { readAdviceRules } from '../advice/read-advice-rules.js';
import { refreshDrift } from '../outlook/refresh-drift.js';
import type { Actor } from '../plumbing/actor.js';
import { DomainError } from '../plumbing/domain-error.js';
import { preparePull } from '../pulls/prepare-pull.js';
import { writePull, type DrivenPull } from '../pulls/write-pull.js';
import { holdOpenVisit } from '../tuning-sessions/hold-open-visit.js';
import { loadSession } from '../tuning-sessions/load-session.js';
import { visitOfSession } from '../tuning-sessions/visit-of-session.js';
import { loadLog } from './load-log.js';
import { presentLog } from './present-log.js';

/** Pulls that were taken from a log, and the visit that they belong to. */
export interface ConfirmedPulls {
  readonly pulls: Pull[];
  readonly visitId: string;
}

/**
 * Takes pulls that were found in a log into the book, with the duty and hold that were set for them: all of them or
 * none. One that the analysis judges unusable is recorded as such, with its reasons.
 *
 * @throws DomainError not-found, visit-closed, conflict for a pull that is taken already, invalid-request for an index
 *   that the log does not have or a pull without a peak, and the refusals of `preparePull`
 */
export async function confirmPulls(actor: Actor, logId: string, input: LogConfirm): Promise<ConfirmedPulls> {
  const { tuningSessionId } = await loadLog(actor.db, logId);
  const visitId = await visitOfSession(actor.db, tuningSessionId);
  const rules = await readAdviceRules(actor);
  const pulls = await actor.db.$transaction(async (tx) => {
    await holdOpenVisit(tx, visitId);
    const session = await loadSession(tx, tuningSessionId);
    const { analysis, confirmed, version } = await presentLog(tx, await loadLog(tx, logId));
    refuseOtherVersion(input, version);
    const taken = new Set(confirmed.map(({ index }) => index));
    const goal = await preparePull(tx, session, input);
    const written: Pull[] = [];
    for (const [position, index] of input.indexes.entries()) {
      if (taken.has(index))
        throw wrongIndex('conflict', position, `pull ${index + 1} of this log is in the book already`);
      taken.add(index);
      const driven = drivenPull(input, analysis.pulls[index], {
        position,
        index,
        logId,
        version,
        recordedAt: actor.now(),
      });
      written.push(await writePull(tx, actor, { session, goal, rules }, driven));
    }
    await refreshDrift(tx, actor, goal.preset);
    return written;
  });
  return { pulls, visitId };
}

/** Whoever saw one version must not take in the pulls of another one that was made meanwhile. */
function refuseOtherVersion(input: LogConfirm, version: number): void {
  if (input.version === undefined || input.version === version) return;
  const message = 'this log was computed anew meanwhile; look at its pulls again first';
  throw new DomainError('conflict', message, { errors: [{ field: 'version', message }] });
}

function wrongIndex(code: 'conflict' | 'invalid-request', position: number, message: string): DomainError {
  return new DomainError(code, message, { errors: [{ field: `indexes.${position}`, message }] });
}

function drivenPull(
  input: LogConfirm,
  found: FoundPull | undefined,
  from: { position: number; index: number; logId: string; version: number; recordedAt: Date },
): DrivenPull {
  const { position, index, logId, version, recordedAt } = from;
  if (found === undefined) throw wrongIndex('invalid-request', position, `this log has no pull ${index + 1}`);
  const { peakKpa, gear, rawPeakKpa, settledKpa, overshootPct, riseTimeS, onsetRpm } = found;
  const { intakeC, gradientPct, hunting } = found;
  if (peakKpa === null) {
    throw wrongIndex(
      'invalid-request',
      position,
      `pull ${index + 1} of this log has no peak that could be told`,
    );
  }
  return {
    dutyPct: input.dutyPct,
    holdPct: input.holdPct,
    correctionStrength: input.correctionStrength,
    overrideOn: input.overrideOn,
    heldForS: input.heldForS,
    peakKpa,
    heatSoaked: input.heatSoaked,
    note: '',
    measured: {
      ...{ gear, rawPeakKpa, settledKpa, overshootPct, riseTimeS, onsetRpm },
      ...{ intakeC, gradientPct, hunting },
    },
    usable: found.usable,
    reasons: found.reasons,
    from: { logId, logVersion: version, logPullIndex: index },
    recordedAt,
  };
}

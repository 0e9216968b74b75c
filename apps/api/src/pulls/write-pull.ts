import type { Pull, Reason } from '@pullbook/contracts';
import { formatPressure } from '@pullbook/tuning-math';
import type { WorkshopTransaction } from '@pullbook/database';
import type { Actor } from '../plumbing/actor.js';
import type { WorkshopRules } from '../advice/read-advice-rules.js';
import { provenDutyBefore } from '../outlook/proven-duty-before.js';
import { recordEvent } from '../plumbing/record-event.js';
import type { SessionRecord } from '../tuning-sessions/load-session.js';
import type { PullableGoal } from './prepare-pull.js';
import { presentPull } from './present-pull.js';
import { pullWarnings } from '@pullbook/next-pull';

type Measured =
  | 'gear'
  | 'rawPeakKpa'
  | 'settledKpa'
  | 'overshootPct'
  | 'riseTimeS'
  | 'onsetRpm'
  | 'intakeC'
  | 'gradientPct'
  | 'hunting';
type Setting = 'dutyPct' | 'holdPct' | 'correctionStrength' | 'overrideOn' | 'heldForS';

/** A pull as it was driven and measured, before it has a number in the book. */
export interface DrivenPull extends Pick<Pull, Setting | 'peakKpa' | 'heatSoaked' | 'note'> {
  readonly measured: Partial<Pick<Pull, Measured>>;
  readonly usable: boolean;
  readonly reasons: readonly Reason[];
  readonly from: {
    readonly logId: string;
    readonly logVersion: number;
    readonly logPullIndex: number;
  } | null;
  readonly recordedAt: Date;
}

/**
 * Writes a pull under the next number of its preset and visit. The visit must be held by this transaction.
 *
 * @param place with the workshop's rules: its step limit is the largest rise of duty or gate hold that it allows
 */
export async function writePull(
  tx: WorkshopTransaction,
  actor: Actor,
  place: { session: SessionRecord; goal: PullableGoal; rules: WorkshopRules },
  driven: DrivenPull,
): Promise<Pull> {
  const { session, goal, rules } = place;
  const key = { visitId: session.visit.id, presetId: goal.preset.id };
  const before = await tx.pull.findMany({
    where: key,
    orderBy: { number: 'asc' },
    select: { number: true, dutyPct: true, holdPct: true, usable: true, voidedAt: true },
  });
  const counted = before.filter((pull) => pull.usable && pull.voidedAt === null);
  const { measured, from, reasons, ...rest } = driven;
  const { hunting = null, ...figures } = measured;
  const row = await tx.pull.create({
    data: {
      ...key,
      tuningSessionId: session.id,
      presetRevision: goal.revision,
      number: (before.at(-1)?.number ?? 0) + 1,
      ...rest,
      ...figures,
      ...huntingColumns(hunting),
      ...from,
      source: from === null ? 'typed' : 'log',
      reasons: [...reasons],
      warnings: pullWarnings(driven, {
        ...{ ceilingKpa: goal.ceilingKpa, stepLimit: rules.stepLimit },
        provenDutyPct: await provenDutyBefore(tx, goal.preset, rules, key.visitId),
        highestDutyPct: Math.max(goal.dutyRange.min, ...counted.map((pull) => pull.dutyPct)),
        highestHoldPct: highestOf([goal.preset.values.gateHoldPct, ...counted.map((pull) => pull.holdPct)]),
      }),
      recordedBy: actor.name,
    },
  });
  await recordEvent(tx, actor, {
    action: 'pull-recorded',
    noun: 'pull',
    recordId: row.id,
    summary: `pull ${row.number} of ${goal.preset.values.name}: duty ${row.dutyPct} %, peak ${formatPressure(row.peakKpa, 'kPa', { fractionDigits: 1 })}`,
    detail: { ...key, number: row.number, dutyPct: row.dutyPct, peakKpa: row.peakKpa, source: row.source },
  });
  return presentPull(row);
}

function highestOf(holds: readonly (number | null)[]): number | null {
  const known = holds.filter((hold) => hold !== null);
  return known.length === 0 ? null : Math.max(...known);
}

function huntingColumns(hunting: Pull['hunting']) {
  return {
    huntingHz: hunting?.frequencyHz ?? null,
    huntingDampingRatio: hunting?.dampingRatio ?? null,
    huntingAmplitudeKpa: hunting?.amplitudeKpa ?? null,
  };
}

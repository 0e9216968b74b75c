import type { WorkshopTransaction } from '@pullbook/database';
import { formatPressure } from '@pullbook/tuning-math';
import { DomainError } from '../plumbing/domain-error.js';
import type { PresetRecord } from '../presets/load-presets.js';

interface Goal {
  readonly kind: string;
  readonly targetKpa: number | null;
  readonly toleranceKpa: number;
  readonly ceilingKpa: number | null;
}

/**
 * A pull is driven for the goal that was in sight: sent later, it must not end up under another one without anybody
 * noticing. Where only the rest of the preset is new (its name, the duty kept), it belongs to the revision that was seen.
 *
 * @param seenRevision undefined where the sender does not say; then the newest one is taken
 * @returns revision that the pull was driven on
 * @throws DomainError goal-changed with both goals in words; invalid-request for a revision that never was
 */
export async function checkSeenGoal(
  tx: WorkshopTransaction,
  preset: PresetRecord,
  seenRevision: number | undefined,
): Promise<number> {
  const { id, revision, values } = preset;
  if (seenRevision === undefined || seenRevision === revision) return revision;
  const seen = await tx.presetRevision.findFirst({ where: { presetId: id, revision: seenRevision } });
  if (seen === null) {
    throw refusal('invalid-request', `${values.name} has no revision ${seenRevision}`);
  }
  if (isSameGoal(seen, values)) return seenRevision;
  throw refusal(
    'goal-changed',
    `the goal of ${values.name} was changed after this was driven: it was ${sayGoal(seen)} (revision ${seenRevision}), it is ${sayGoal(values)} (revision ${revision})`,
  );
}

function isSameGoal(a: Goal, b: Goal): boolean {
  const isSame = a.kind === b.kind && a.targetKpa === b.targetKpa;
  return isSame && a.toleranceKpa === b.toleranceKpa && a.ceilingKpa === b.ceilingKpa;
}

function sayGoal({ targetKpa, toleranceKpa, ceilingKpa }: Goal): string {
  const target = targetKpa === null ? 'no target' : `target ${say(targetKpa)} ± ${say(toleranceKpa)}`;
  return `${target}, ${ceilingKpa === null ? 'no ceiling' : `ceiling ${say(ceilingKpa)}`}`;
}

const say = (kpa: number) => formatPressure(kpa, 'kPa', { fractionDigits: 1 });

function refusal(code: DomainError['code'], message: string): DomainError {
  return new DomainError(code, message, { errors: [{ field: 'presetRevision', message }] });
}

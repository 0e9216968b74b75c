import type { NextPull, Preset, Pull, PullNew, Reason } from '@pullbook/contracts';
import { pullWarnings } from '@pullbook/next-pull';

interface Bench {
  readonly preset: Pick<Preset, 'gateHoldPct'>;
  /** Pulls of the preset in this visit, before this one. */
  readonly pulls: readonly Pick<Pull, 'dutyPct' | 'holdPct' | 'usable' | 'voidedAt'>[];
  readonly next: Pick<NextPull, 'stepLimit' | 'basis'> | undefined;
  /** Lower end of the controller's duty, %. */
  readonly lowestDutyPct: number;
}

/**
 * What to mind about a pull that was just driven, told at once: the server, which may be out of reach, holds it against
 * the same bounds. Empty while neither ceiling nor step limit is known here.
 */
export function warningsHere(pull: PullNew, { preset, pulls, next, lowestDutyPct }: Bench): Reason[] {
  const ceilingKpa = next?.basis.ceilingKpa ?? null;
  if (next === undefined || ceilingKpa === null) return [];
  const counted = pulls.filter((one) => one.usable && one.voidedAt === null);
  const holds = [preset.gateHoldPct, ...counted.map((one) => one.holdPct)].filter((hold) => hold !== null);
  return pullWarnings(pull, {
    ceilingKpa,
    stepLimit: next.stepLimit,
    // An answer that this device has kept for long may be from before it was told.
    provenDutyPct: next.basis.provenDutyPct ?? null,
    highestDutyPct: Math.max(lowestDutyPct, ...counted.map((one) => one.dutyPct)),
    highestHoldPct: holds.length === 0 ? null : Math.max(...holds),
  });
}

import { PullNew, type SettingRange } from '@pullbook/contracts';
import type { ShapeDrive } from '@pullbook/practice-car';
import { findNextPull } from '../advice/find-next-pull.js';
import type { Actor } from '../plumbing/actor.js';
import { changePreset } from '../presets/change-preset.js';
import { getPreset } from '../presets/get-preset.js';
import { recordPull } from '../pulls/record-pull.js';
import type { DemoClock } from './demo-clock.js';

/** One preset worked on in a tuning session of the scenario. */
export interface PresetDrive {
  readonly sessionId: string;
  readonly presetId: string;
  readonly targetKpa: number;
  readonly range: SettingRange;
  readonly drive: ShapeDrive;
  readonly clock: DemoClock;
  /** The advice is asked before every pull, as with a car that nobody trusts. */
  readonly isWary: boolean;
  /** Ends after so many pulls, wherever the duty then is; left out: goes on until the advice accepts. */
  readonly pullCount?: number | undefined;
}

/** From this share of the target on the advice is asked; below it careful steps are taken by hand. */
const ASK_FROM = 0.9;
/** Seconds from one pull to the next: back to the start, cool down, write down. */
export const betweenPullsS = 240;
const MOST_PULLS = 30;
/** Pulls at a duty that the advice has led to, before it is asked again. */
const PROVING_PULLS = 3;

/**
 * Drives a preset as a careful tuner does: eight points at a time while far away, then by the advice; proves
 * each duty that it leads to with three pulls and stores the accepted one.
 *
 * @returns whether the advice accepted
 */
export async function drivePreset(tuner: Actor, plan: PresetDrive): Promise<boolean> {
  const mostPulls = plan.pullCount ?? MOST_PULLS;
  let dutyPct = plan.range.min + gridStep(plan.range, 10);
  let stillToPull = 1;
  for (let made = 0; made < mostPulls; made += 1) {
    const peakKpa = await pullOnce(tuner, plan, { dutyPct, made });
    stillToPull -= 1;
    if (stillToPull > 0) continue;
    if (!plan.isWary && peakKpa < ASK_FROM * plan.targetKpa) {
      dutyPct = Math.min(plan.range.max, dutyPct + gridStep(plan.range, stepFor(peakKpa / plan.targetKpa)));
      stillToPull = 1;
      continue;
    }
    const { advice } = await findNextPull(tuner, plan.sessionId, plan.presetId);
    if (advice === null || advice.duty === null) return false;
    if (advice.action === 'accept') {
      await storeDuty(tuner, plan.presetId, advice.duty);
      return true;
    }
    dutyPct = advice.duty;
    stillToPull = plan.isWary ? 1 : PROVING_PULLS;
  }
  return false;
}

/** Eight points while far below the target, fewer near it. */
function stepFor(shareOfTarget: number): number {
  return shareOfTarget < 0.75 ? 8 : 4;
}

function gridStep({ step }: SettingRange, points: number): number {
  return Math.max(1, Math.floor(points / step)) * step;
}

async function pullOnce(
  tuner: Actor,
  { sessionId, presetId, drive, clock }: PresetDrive,
  { dutyPct, made }: { dutyPct: number; made: number },
): Promise<number> {
  const peakKpa = Math.round(drive.pull(dutyPct).peakKpa * 10) / 10;
  clock.pass(betweenPullsS);
  const heatSoaked = made >= 5;
  await recordPull(tuner, sessionId, PullNew.parse({ presetId, dutyPct, peakKpa, gear: 4, heatSoaked }));
  return peakKpa;
}

async function storeDuty(tuner: Actor, presetId: string, dutyPct: number): Promise<void> {
  const { revision, dutyPct: stored } = await getPreset(tuner, presetId);
  if (stored === dutyPct) return;
  await changePreset(tuner, presetId, revision, { dutyPct, reason: 'accepted by the advice' });
}

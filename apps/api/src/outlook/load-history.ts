import type { WorkshopTransaction } from '@pullbook/database';
import { pullsAtBaseHold } from '@pullbook/next-pull';
import type { ConditionedPull, RelativeSpread } from '@pullbook/tuning-math';
import type { WorkshopRules } from '../advice/read-advice-rules.js';
import type { PresetRecord } from '../presets/load-presets.js';
import { presetStanding } from '../presets/preset-standing.js';
import { conditionsOfPulls, type IntakeSource } from './conditions-of-pulls.js';
import { isAtSettings, settingsKeptFrom } from './kept-settings.js';
import { readPulls, readRevisions, type HistoryRow } from './read-pulls.js';
import { readSignOffs } from './read-sign-offs.js';
import { spreadOfOthers } from './spread-of-others.js';

/** A usable pull at the stored settings, with its place in the book. */
export interface HistoryPull extends ConditionedPull {
  readonly row: HistoryRow;
}

/** What one visit says of the preset. */
export interface HistoryVisit {
  readonly id: string;
  readonly number: number;
  readonly pulls: readonly HistoryPull[];
  readonly isSignedOff: boolean;
  readonly isProof: boolean;
}

/** A preset's usable pulls at its stored settings since these have stood, visit by visit. */
export interface PresetHistory {
  readonly preset: PresetRecord;
  /** In order of time; only those with pulls. */
  readonly visits: readonly HistoryVisit[];
  /** Pulls whose gate hold nobody wrote down, while others have one. */
  readonly withoutHoldCount: number;
  readonly intakeSource: IntakeSource;
  readonly spread: RelativeSpread;
}

/** Reads how a preset has been pulled at its stored settings. Four queries, however long the history. */
export async function loadHistory(
  db: WorkshopTransaction,
  preset: PresetRecord,
  rules: WorkshopRules,
): Promise<PresetHistory> {
  const rows = await readPulls(db, preset.id);
  const revision = settingsKeptFrom(preset, await readRevisions(db, preset.id));
  const kept = fromVisitOf(rows, revision);
  const atSettings = pullsOfSettings(kept, preset);
  const { conditions, intakeSource } = conditionsOfPulls(atSettings);
  const pulls = atSettings.flatMap((row, index): HistoryPull[] => {
    const known = conditions[index];
    return known === undefined ? [] : [{ row, peakKpa: row.peakKpa, conditions: known }];
  });
  const visitIds = [...new Set(atSettings.map(({ visitId }) => visitId))];
  const signedOff = await readSignOffs(db, preset, visitIds);
  const visits = visitIds.map((id): HistoryVisit => {
    const ofVisit = pulls.filter(({ row }) => row.visitId === id);
    const isSignedOff = signedOff.has(id);
    return {
      id,
      number: ofVisit[0]?.row.visit.number ?? 0,
      pulls: ofVisit,
      isSignedOff,
      isProof: !isSignedOff && isProven(preset, kept, id, rules),
    };
  });
  return {
    preset,
    visits,
    withoutHoldCount: countWithoutHold(atSettings),
    intakeSource,
    spread: spreadOfOthers(rows, new Set(atSettings.map(({ id }) => id))),
  };
}

/** From the visit on in which the settings were found: the one of the last pull before they were stored. */
function fromVisitOf(rows: readonly HistoryRow[], revision: number): readonly HistoryRow[] {
  const found = rows.findLast((row) => row.presetRevision < revision);
  if (found === undefined) return rows;
  return rows.filter((row) => row.visit.number >= found.visit.number);
}

function pullsOfSettings(rows: readonly HistoryRow[], { values }: PresetRecord): HistoryRow[] {
  const isOverride = values.kind === 'timed-override';
  const counted = rows.filter(
    (row) => row.usable && row.peakKpa > 0 && (row.overrideOn === null || row.overrideOn === isOverride),
  );
  const atDuty = counted.filter((row) => isAtSettings({ ...row, holdPct: null }, values, null));
  const [first] = pullsAtBaseHold(atDuty, values.gateHoldPct).filter(({ holdPct }) => holdPct !== null);
  const baseHoldPct = values.gateHoldPct ?? first?.holdPct ?? null;
  return atDuty.filter((row) => isAtSettings(row, values, baseHoldPct));
}

function countWithoutHold(pulls: readonly HistoryRow[]): number {
  const without = pulls.filter(({ holdPct }) => holdPct === null).length;
  return without === pulls.length ? 0 : without;
}

/** Whether the standing pulls of one visit prove the preset, whatever came before. */
function isProven(
  preset: PresetRecord,
  rows: readonly HistoryRow[],
  visitId: string,
  rules: WorkshopRules,
): boolean {
  const pulls = rows.filter((row) => row.visitId === visitId);
  const alone = { ...preset, pulls, spreads: [], signedOffRevision: null, isReplaced: false };
  return presetStanding(alone, rules, null).proof?.isProven ?? false;
}

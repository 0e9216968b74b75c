import { ReadinessAnswer, Stage, type BoardCard } from '@pullbook/contracts';
import type { PresetAdvice } from '@pullbook/next-pull';
import type { PresetStanding } from '@pullbook/tuning-math';
import type { WorkshopRules } from '../advice/read-advice-rules.js';
import type { PresetRecord } from '../presets/load-presets.js';
import { adviceOf } from '../presets/present-preset.js';
import { presetStanding } from '../presets/preset-standing.js';
import { sayMissing } from '../presets/say-missing.js';
import { stripFigures } from '../presets/strip-figures.js';
import { holdUp, type HoldUp, type PresetAtHand } from './hold-up.js';
import type { BoardVisit } from './load-board-visits.js';

/** What all cards of a board share. */
export interface BoardRules {
  readonly rules: WorkshopRules;
  readonly now: Date;
  /** How many items of the workshop's checklist a person ticks. */
  readonly itemsToTick: number;
}

interface StripOfPreset {
  readonly preset: PresetRecord;
  readonly pulls: BoardVisit['pulls'];
  readonly asked: PresetAdvice | null;
  readonly standing: PresetStanding;
}

/** The stages in which the advice says something of use; for the others it is not computed. */
const advisedStages: readonly string[] = ['arrived', 'on-test', 'to-sign-off'];

/**
 * One card: where the car is, a strip for each preset, and what holds it up.
 * @param presets those of the car that are not replaced, in slot order
 */
export function boardCard(visit: BoardVisit, presets: readonly PresetRecord[], board: BoardRules): BoardCard {
  const isAdvised = advisedStages.includes(visit.stage);
  const shown = presets.map((preset): StripOfPreset => {
    const pulls = visit.pulls.filter((pull) => pull.presetId === preset.id);
    const counted = pulls.filter((pull) => pull.voidedAt === null);
    const inVisit = { ...preset, pulls: counted };
    // Without a pull, and where none may be driven, there is nothing to weigh.
    const asked = isAdvised && (counted.length > 0 || mayPull(visit)) ? adviceOf(inVisit, board.rules) : null;
    // What this visit's pulls prove: a sign-off of another visit does not count for it.
    const standing = presetStanding({ ...inVisit, signedOffRevision: null }, board.rules, asked);
    return { preset, pulls, asked, standing };
  });
  const { car } = visit;
  return {
    visitId: visit.id,
    number: visit.number,
    revision: visit.revision,
    stage: Stage.parse(visit.stage),
    plate: car.plate,
    model: car.model,
    carId: car.id,
    customerName: car.customer.name,
    tunerName: visit.tuner?.name ?? null,
    bay: visit.bay,
    bookedFor: visit.bookedFor?.toISOString() ?? null,
    promisedAt: visit.promisedAt?.toISOString() ?? null,
    presets: shown.map((strip) => stripOf(strip, mayPull(visit))),
    ...mindDrift(sentenceOf(visit, shown, board), presets),
  };
}

type StatusBesidesDrift = Pick<BoardCard, 'statusBesidesDrift'>;

/** A standing drift alarm needs somebody's eye, whatever comes next for the car. */
function mindDrift(said: HoldUp, presets: readonly PresetRecord[]): HoldUp & StatusBesidesDrift {
  const drifting = presets.filter(({ drift }) => drift !== null).map(({ values }) => values.name);
  const statusBesidesDrift = said.status;
  if (drifting.length === 0) return { ...said, statusBesidesDrift };
  const status = `drift alarm: ${drifting.join(', ')}; ${said.status}`;
  return { status, statusBesidesDrift, needsAttention: true };
}

/** The next pull is drawn only where it may be driven. */
function mayPull(visit: BoardVisit): boolean {
  return visit.stage === 'on-test' && visit.tuningSessions[0]?.readinessPassed === true;
}

function stripOf(
  { preset, pulls, asked, standing }: StripOfPreset,
  withNext: boolean,
): BoardCard['presets'][number] {
  const marked = pulls.map(({ number, peakKpa, voidedAt }) => ({
    number,
    peakKpa,
    isVoid: voidedAt !== null,
  }));
  const advice = withNext ? (asked?.advice ?? null) : null;
  return {
    presetId: preset.id,
    name: preset.values.name,
    slot: preset.values.slot,
    state: preset.signedOffRevision === preset.revision ? 'signed-off' : standing.state,
    strip: stripFigures(preset.values, preset.car.baseKpa, marked, advice),
    drift: preset.drift,
  };
}

function sentenceOf(visit: BoardVisit, shown: readonly StripOfPreset[], board: BoardRules): HoldUp {
  const { now, rules, itemsToTick } = board;
  const leastPulls = rules.requiredPulls;
  return holdUp({
    stage: Stage.parse(visit.stage),
    now,
    bookedFor: visit.bookedFor,
    promisedAt: visit.promisedAt,
    hasController: visit.car.controllerId !== null,
    hasTuner: visit.tunerId !== null,
    presets: shown.map((strip) => atHand(strip, leastPulls)),
    readiness: readinessOf(visit),
    report: reportOf(visit),
    itemsToTick,
  });
}

function atHand({ preset, asked, standing }: StripOfPreset, leastPulls: number): PresetAtHand {
  const { name, targetKpa, ceilingKpa, dutyPct } = preset.values;
  const accepted = asked?.acceptedDutyPct ?? null;
  return {
    name,
    hasTarget: targetKpa !== null,
    hasCeiling: ceilingKpa !== null,
    advice: asked?.advice ?? null,
    isProven: standing.state === 'proven',
    toProve: accepted !== null && accepted === dutyPct ? (sayMissing(standing, leastPulls)[0] ?? null) : null,
  };
}

function readinessOf({
  tuningSessions: [newest],
}: BoardVisit): { passed: boolean; doneCount: number } | null {
  if (newest === undefined) return null;
  const items = newest.readiness === null ? [] : ReadinessAnswer.parse(newest.readiness).items;
  return { passed: newest.readinessPassed, doneCount: items.filter((item) => item.ok).length };
}

function reportOf({ reportLinks }: BoardVisit): 'none' | 'sent' | 'opened' {
  if (reportLinks.length === 0) return 'none';
  return reportLinks.some((link) => link.openedCount > 0) ? 'opened' : 'sent';
}

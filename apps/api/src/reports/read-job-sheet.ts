import { cautionsBeforePulling, PressureUnit, Reason, TemperatureUnit } from '@pullbook/contracts';
import { sentence, type Sentence } from '@pullbook/tuning-math';
import { z } from 'zod';
import { readAdviceRules } from '../advice/read-advice-rules.js';
import type { JobSheet, JobSheetPreset, JobSheetPull } from '../paper/job-sheet.js';
import type { Actor } from '../plumbing/actor.js';
import { loadPresets, type PresetRecord } from '../presets/load-presets.js';
import { presentPreset } from '../presets/present-preset.js';
import { stripFigures } from '../presets/strip-figures.js';
import { loadSessions } from '../tuning-sessions/load-session.js';
import { presentReadiness } from '../tuning-sessions/present-readiness.js';
import { loadSheetVisit, type SheetVisit } from './load-sheet-visit.js';

/**
 * All that the printed page shows which travels with the car.
 *
 * @param origin where this book is served, such as `http://127.0.0.1:3000`: the code on the page leads there
 * @throws DomainError not-found
 */
export async function readJobSheet(actor: Actor, visitId: string, origin: string): Promise<JobSheet> {
  const visit = await loadSheetVisit(actor.db, visitId);
  const member = await actor.db.member.findUniqueOrThrow({ where: { id: actor.memberId } });
  const sessions = await loadSessions(actor.db, { visitId });
  const rules = await readAdviceRules(actor);
  const presets = await loadPresets(actor.db, { carId: visit.carId });
  const { items } = sessions.at(-1)?.readiness ?? presentReadiness(unanswered, null);
  const { pulls, workshopName, ...onSheet } = visit.sheet;
  return {
    ...onSheet,
    workshopName,
    units: {
      pressure: PressureUnit.parse(member.pressureUnit),
      temperature: TemperatureUnit.parse(member.temperatureUnit),
    },
    presets: presets
      .filter(({ isReplaced }) => !isReplaced)
      .map((preset) => sheetPreset(preset, presentPreset(preset, rules).state, pulls)),
    readiness: items.map(({ key, question, ok }) => ({ key, question, ok })),
    cautions: cautionsBeforePulling,
    visitUrl: `${origin}/visits/${visitId}`,
    printedAt: actor.now().toISOString(),
    printedBy: actor.name,
  };
}

const unanswered = { readiness: null, readinessPassed: false, readinessBy: null, readinessAt: null };

function sheetPreset(
  { id, values, car }: PresetRecord,
  state: JobSheetPreset['state'],
  allPulls: SheetVisit['sheet']['pulls'],
): JobSheetPreset {
  const pulls = allPulls.filter((pull) => pull.presetId === id).map(sheetPull);
  const { name, slot, kind, holdSeconds, purpose, targetKpa, toleranceKpa, ceilingKpa } = values;
  return {
    ...{ name, slot, kind, holdSeconds, purpose, targetKpa, toleranceKpa, ceilingKpa },
    dutyPct: values.dutyPct,
    gateHoldPct: values.gateHoldPct,
    state,
    strip: stripFigures(values, car.baseKpa, pulls, null),
    pulls,
  };
}

function sheetPull(row: SheetVisit['sheet']['pulls'][number]): JobSheetPull {
  const isVoid = row.voidedAt !== null || !row.usable;
  return {
    number: row.number,
    dutyPct: row.dutyPct,
    gear: row.gear,
    peakKpa: row.peakKpa,
    isVoid,
    verdict: verdictOf(row),
  };
}

const Reasons = z.array(Reason);

function verdictOf(row: SheetVisit['sheet']['pulls'][number]): Sentence {
  if (row.voidedAt !== null) return sentence`void: ${row.voidReason ?? ''}`;
  const said = Reasons.parse(row.usable ? row.warnings : row.reasons)
    // One that was put on record before reasons came in pieces is printed as it stands.
    .map(({ text, pieces = [text] }) => ({ text, pieces }))
    .reduce((all, noted) => sentence`${all}: ${noted}`, row.usable ? sentence`usable` : sentence`not usable`);
  if (row.foundSoundAt === null) return said;
  return sentence`${said}${said.text.endsWith('.') ? '' : '.'} Car looked over, sound.`;
}

import type { Board, BoardQuery } from '@pullbook/contracts';
import { readAdviceRules } from '../advice/read-advice-rules.js';
import { readChecklist } from '../checklists/read-checklist.js';
import type { Actor } from '../plumbing/actor.js';
import { loadPresets, type PresetRecord } from '../presets/load-presets.js';
import { boardCard } from './board-card.js';
import { chooseVisits } from './choose-visits.js';
import { loadBoardVisits } from './load-board-visits.js';

/** The visits of each stage that are wanted soonest, with their cards; how many there are of all. */
export async function getBoard(actor: Actor, query: BoardQuery): Promise<Board> {
  const now = actor.now();
  const rules = await readAdviceRules(actor);
  const chosen = await chooseVisits(actor.db, query);
  const visits = await loadBoardVisits(actor.db, chosen.ids);
  const carIds = [...new Set(visits.map((visit) => visit.carId))];
  const presets = await loadPresets(actor.db, { carId: { in: carIds } });
  const ofCar = groupByCar(presets);
  const { items } = await readChecklist(actor.db, actor.workshopId);
  const itemsToTick = items.filter(({ evidence }) => evidence === null).length;
  const ofAll = { rules, now, itemsToTick };
  const cards = visits.map((visit) => boardCard(visit, ofCar.get(visit.carId) ?? [], ofAll));
  return { cards, counts: chosen.counts, tuners: chosen.tuners, asOf: now.toISOString() };
}

function groupByCar(presets: readonly PresetRecord[]): Map<string, PresetRecord[]> {
  const groups = new Map<string, PresetRecord[]>();
  for (const preset of presets.filter((record) => !record.isReplaced)) {
    const group = groups.get(preset.car.id) ?? [];
    group.push(preset);
    groups.set(preset.car.id, group);
  }
  return groups;
}

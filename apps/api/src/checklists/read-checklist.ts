import { ChecklistItem, signOffKeys, type SignOffChecklist } from '@pullbook/contracts';
import type { WorkshopTransaction } from '@pullbook/database';
import { z } from 'zod';
import { builtInItems, findBuiltInItem } from './built-in-items.js';

/** What is kept of an item; what is built in is told by its key and never stored. */
const KeptItems = z.array(ChecklistItem.omit({ builtIn: true }));
export type KeptItem = z.infer<typeof KeptItems>[number];

/** What a sign-off of this workshop asks for now: the newest revision, or the built-in list. */
export async function readChecklist(db: WorkshopTransaction, workshopId: string): Promise<SignOffChecklist> {
  const { checklistRevision: revision } = await db.workshop.findUniqueOrThrow({
    where: { id: workshopId },
    select: { checklistRevision: true },
  });
  const row = await db.checklistRevision.findFirst({ where: { revision } });
  if (row === null) return { items: builtInList(), revision, changedBy: null, changedAt: null };
  return {
    items: KeptItems.parse(row.items).map(presentItem),
    revision,
    changedBy: row.madeBy,
    changedAt: row.madeAt.toISOString(),
  };
}

function builtInList(): ChecklistItem[] {
  return signOffKeys.map((key) => presentItem({ key, text: builtInItems[key].text, evidence: null }));
}

const presentItem = ({ key, text, evidence }: KeptItem): ChecklistItem => ({
  key,
  text,
  evidence,
  builtIn: findBuiltInItem(key),
});

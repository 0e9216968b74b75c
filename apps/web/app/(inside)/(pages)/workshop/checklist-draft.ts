import type { ChecklistItem, ItemEvidence, SignOffChecklistChange } from '@pullbook/contracts';

/** An item while somebody changes the list. */
export interface DraftItem {
  /** Names the line on screen, whether the item is known to the book yet or not. */
  readonly line: string;
  readonly key: string | null;
  readonly text: string;
  readonly evidence: ItemEvidence | null;
  readonly builtIn: ChecklistItem['builtIn'];
}

export const longestItem = 240;
export const mostItems = 40;

export const draftOf = (items: readonly ChecklistItem[]): readonly DraftItem[] =>
  items.map((item) => ({ ...item, line: item.key }));

/** The list with one item a place further up (-1) or down (1); unchanged where there is no such place. */
export function moveItem(items: readonly DraftItem[], line: string, by: -1 | 1): readonly DraftItem[] {
  const from = items.findIndex((item) => item.line === line);
  const moved = items[from];
  const other = items[from + by];
  if (moved === undefined || other === undefined) return items;
  return items.map((item) => (item === moved ? other : item === other ? moved : item));
}

/** The list with a new item of the workshop's own at its end. */
export function addItem(items: readonly DraftItem[]): readonly DraftItem[] {
  const taken = new Set(items.map(({ line }) => line));
  let number = items.length + 1;
  while (taken.has(`new-${number}`)) number += 1;
  return [...items, { line: `new-${number}`, key: null, text: '', evidence: null, builtIn: null }];
}

/** The list without an item of the workshop's own; built-in items stay whatever is asked. */
export const removeItem = (items: readonly DraftItem[], line: string): readonly DraftItem[] =>
  items.filter((item) => item.line !== line || item.builtIn !== null);

export const changeItem = (
  items: readonly DraftItem[],
  line: string,
  change: Partial<Pick<DraftItem, 'text' | 'evidence'>>,
): readonly DraftItem[] => items.map((item) => (item.line === line ? { ...item, ...change } : item));

/** What is wrong with an item's words, or undefined. */
export function faultOf({ text }: DraftItem): string | undefined {
  const length = text.trim().length;
  if (length === 0) return 'Say what is to be looked at.';
  return length > longestItem ? `At most ${longestItem} characters; these are ${length}.` : undefined;
}

/** What is sent. */
export const wantedOf = (items: readonly DraftItem[]): SignOffChecklistChange['items'] =>
  items.map(({ key, text, evidence }) => ({ key, text: text.trim(), evidence }));

import { describe, expect, it } from 'vitest';
import {
  addItem,
  changeItem,
  draftOf,
  faultOf,
  moveItem,
  removeItem,
  wantedOf,
  type DraftItem,
} from './checklist-draft';

const builtIn = { text: 'Is nothing leaking?', reason: 'Oil burns.' };
const draft = draftOf([
  { key: 'leaks', text: 'Is nothing leaking?', evidence: null, builtIn },
  { key: 'own-2-1', text: 'Is the bay swept?', evidence: null, builtIn: null },
  { key: 'own-2-2', text: 'One hot pull', evidence: 'heatSoakedPull', builtIn: null },
]);
const linesOf = (items: readonly DraftItem[]) => items.map(({ line }) => line);

describe('the draft of a checklist', () => {
  it('moves an item by one place, and nowhere at the ends or for an unknown line', () => {
    expect(linesOf(moveItem(draft, 'own-2-2', -1))).toEqual(['leaks', 'own-2-2', 'own-2-1']);
    expect(linesOf(moveItem(draft, 'leaks', 1))).toEqual(['own-2-1', 'leaks', 'own-2-2']);
    expect(moveItem(draft, 'leaks', -1)).toBe(draft);
    expect(moveItem(draft, 'own-2-2', 1)).toBe(draft);
    expect(moveItem(draft, 'unknown', 1)).toBe(draft);
  });

  it('adds items under lines of their own, also after one was removed', () => {
    const two = addItem(addItem(draft));
    expect(linesOf(two).slice(3)).toEqual(['new-4', 'new-5']);
    expect(linesOf(addItem(removeItem(two, 'new-4')))).toEqual([...linesOf(draft), 'new-5', 'new-6']);
  });

  it("removes the workshop's own items and leaves built-in ones", () => {
    expect(linesOf(removeItem(draft, 'own-2-1'))).toEqual(['leaks', 'own-2-2']);
    expect(removeItem(draft, 'leaks')).toEqual(draft);
  });

  it('sends keys, trimmed words and evidence, new items without a key', () => {
    const changed = changeItem(addItem(draft), 'new-4', { text: ' Keys handed over? ', evidence: null });
    expect(wantedOf(changed).slice(2)).toEqual([
      { key: 'own-2-2', text: 'One hot pull', evidence: 'heatSoakedPull' },
      { key: null, text: 'Keys handed over?', evidence: null },
    ]);
  });

  it('asks for words, and not for too many', () => {
    const said = (text: string) => faultOf({ line: 'a', key: null, text, evidence: null, builtIn: null });
    expect(said('  ')).toBe('Say what is to be looked at.');
    expect(said('x'.repeat(240))).toBeUndefined();
    expect(said('x'.repeat(241))).toContain('241');
  });
});

import { signOffKeys, type ChecklistItem } from '@pullbook/contracts';
import { describe, expect, it } from 'vitest';
import { DomainError } from '../plumbing/domain-error.js';
import { builtInItems } from './built-in-items.js';
import { makeItems } from './make-items.js';

const known: readonly ChecklistItem[] = [
  ...signOffKeys.map((key) => ({
    key,
    text: builtInItems[key].text,
    evidence: null,
    builtIn: builtInItems[key],
  })),
  { key: 'own-2-8', text: 'Is the bay swept?', evidence: null, builtIn: null },
];
const wanted = known.map(({ key, text, evidence }) => ({ key: key as string | null, text, evidence }));
const fresh = { key: null, text: 'Is one pull heat-soaked?', evidence: 'heatSoakedPull' } as const;

function refusalOf(work: () => unknown): DomainError {
  try {
    work();
  } catch (error) {
    if (error instanceof DomainError) return error;
    throw error;
  }
  throw new Error('nothing was refused');
}

describe('makeItems(wanted, known, revision)', () => {
  it('gives a new item a key of its own and leaves the others theirs, in the order that was sent', () => {
    const items = makeItems([fresh, ...[...wanted].reverse()], known, 3);
    expect(items.map(({ key }) => key)).toEqual(['own-3-1', 'own-2-8', ...[...signOffKeys].reverse()]);
    expect(items[0]).toEqual({ ...fresh, key: 'own-3-1' });
  });

  it("lets the workshop's own items go and be said anew, and built-in ones be said anew", () => {
    const items = makeItems(
      wanted.slice(0, 7).map((item) => ({ ...item, text: `${item.text} Look twice.` })),
      known,
      3,
    );
    expect(items).toHaveLength(7);
    expect(items.every(({ text }) => text.endsWith('Look twice.'))).toBe(true);
  });

  it.each(signOffKeys)('refuses a list without the built-in item %s and says why it stays', (key) => {
    const error = refusalOf(() =>
      makeItems(
        wanted.filter((item) => item.key !== key),
        known,
        3,
      ),
    );
    expect(error.code).toBe('invalid-request');
    expect(error.message).toContain(builtInItems[key].reason);
  });

  it('refuses an item twice, an unknown one, and a built-in one that the data were to tick; all at once', () => {
    const error = refusalOf(() =>
      makeItems(
        [
          ...wanted.map((item, index) => (index === 0 ? { ...item, evidence: 'proven' as const } : item)),
          { key: 'own-2-8', text: 'Again?', evidence: null },
          { key: 'own-9-9', text: 'Whose?', evidence: null },
        ],
        known,
        3,
      ),
    );
    expect(error.errors.map(({ field }) => field)).toEqual([
      'items.0.evidence',
      'items.8.key',
      'items.9.key',
    ]);
  });
});

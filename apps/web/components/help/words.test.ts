import { describe, expect, it } from 'vitest';
import { words, type HelpWord, type Word } from './words';

const all = Object.entries(words) as ReadonlyArray<[HelpWord, Word]>;
const sentences = (text: string) => text.split(/[.](?=\s|$)/).filter((part) => part.trim() !== '');

describe.each(all)('the word %s', (_, word) => {
  it('is told in one to three whole sentences that a telephone shows at once', () => {
    expect(sentences(word.text).length).toBeGreaterThan(0);
    expect(sentences(word.text).length).toBeLessThanOrEqual(3);
    expect(word.text.length).toBeLessThanOrEqual(300);
    expect(word.text).toMatch(/^[A-Z].*[.]$/);
  });

  it('says its unit or that it has none', () => {
    expect(word.unit === null || word.unit.length > 0).toBe(true);
  });
});

it('no two words have the same name', () => {
  expect(new Set(all.map(([, { name }]) => name)).size).toBe(all.length);
});

import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { keepPractice, readPractice, type KeptPractice } from './kept-practice';
import { noPractice } from './practice';

const order = { level: 'calm', number: 7 } as const;
const begun: KeptPractice = { practice: { ...noPractice, askedAt: [1] }, isReady: true };

beforeEach(() => {
  const held = new Map<string, string>();
  vi.stubGlobal('sessionStorage', {
    getItem: (key: string) => held.get(key) ?? null,
    setItem: (key: string, text: string) => held.set(key, text),
    removeItem: (key: string) => held.delete(key),
  });
});
afterEach(() => vi.unstubAllGlobals());

test('readPractice goes on where keepPractice left off, each car for itself', () => {
  keepPractice(order, begun);
  expect(readPractice(order)).toEqual(begun);
  expect(readPractice({ ...order, number: 8 }).isReady).toBe(false);
});

test('keepPractice of null lets the same car begin anew', () => {
  keepPractice(order, begun);
  keepPractice(order, null);
  expect(readPractice(order)).toEqual({ practice: noPractice, isReady: false });
});

test('a browser that keeps nothing practises all the same', () => {
  vi.stubGlobal('sessionStorage', undefined);
  const warn = vi.spyOn(console, 'warn').mockImplementation(() => undefined);
  keepPractice(order, begun);
  expect(readPractice(order).practice).toEqual(noPractice);
  expect(warn).toHaveBeenCalledTimes(2);
});

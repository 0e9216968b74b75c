import { describe, expect, it } from 'vitest';
import { fillIn, idMadeBy, nextToSend, withDependents } from './outbox-order';
import { entryOf } from './test-outbox';

describe('nextToSend', () => {
  it('takes the oldest that waits, of this person only', () => {
    const entries = [entryOf(3), entryOf(2), entryOf(1, { memberId: 'other' })];
    expect(nextToSend(entries, 'me')?.order).toBe(2);
  });

  it('does not go past a refused entry of the same visit, but on with other visits', () => {
    const refused = entryOf(1, { state: 'refused' });
    const entries = [refused, entryOf(2), entryOf(3, { visitId: 'another visit' })];
    expect(nextToSend(entries, 'me')?.order).toBe(3);
    expect(nextToSend(entries.slice(0, 2), 'me')).toBeNull();
  });

  it('finds nothing in an empty outbox and among sent entries', () => {
    expect(nextToSend([], 'me')).toBeNull();
    expect(nextToSend([entryOf(1, { state: 'sent' })], 'me')).toBeNull();
  });
});

describe('fillIn', () => {
  const sent = entryOf(1, { state: 'sent', answer: { id: 'pull-7' } });

  it('puts in the id that the server gave', () => {
    expect(fillIn(`/pulls/${idMadeBy(sent.key)}/void`, [sent])).toBe('/pulls/pull-7/void');
    expect(fillIn('/pulls', [])).toBe('/pulls');
  });

  it('is null while the id is not known', () => {
    expect(fillIn(`/pulls/${idMadeBy(sent.key)}/void`, [])).toBeNull();
    expect(fillIn(`/pulls/${idMadeBy(sent.key)}/void`, [entryOf(1)])).toBeNull();
  });
});

describe('withDependents', () => {
  it('takes along what cannot be without the entry, and nothing else', () => {
    const pull = entryOf(1);
    const itsVoid = entryOf(2, { path: `/pulls/${idMadeBy(pull.key)}/void` });
    const another = entryOf(3);
    const orders = withDependents([another, itsVoid, pull], pull.key).map((one) => one.order);
    expect(orders).toEqual([1, 2]);
  });
});

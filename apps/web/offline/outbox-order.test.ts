import { describe, expect, it } from 'vitest';
import { drivenAlike, fillIn, idMadeBy, nextToSend, withDependents } from './outbox-order';
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
    const itsMark = entryOf(3, { path: `/pulls/${idMadeBy(pull.key)}/found-sound` });
    const another = entryOf(4);
    const orders = withDependents([another, itsMark, itsVoid, pull], pull.key).map((one) => one.order);
    expect(orders).toEqual([1, 2, 3]);
  });
});

describe('drivenAlike', () => {
  const body = { presetId: 'preset', presetRevision: 2 };
  const entry = entryOf(1, { state: 'refused', body });

  it('finds what waits in the same visit for the same revision of the same preset, and nothing else', () => {
    const entries = [
      entry,
      entryOf(2, { body }),
      entryOf(3, { body: { ...body, presetRevision: 3 } }),
      entryOf(4, { body: { ...body, presetId: 'other' } }),
      entryOf(5, { body, visitId: 'other' }),
      entryOf(6, { body, state: 'sent' }),
      entryOf(7, { body: { reason: 'typed wrong' } }),
    ];
    expect(drivenAlike(entries, entry).map((one) => one.order)).toEqual([1, 2]);
  });

  it('finds the entry alone where it speaks of no preset', () => {
    const ofVoid = entryOf(1, { body: { reason: 'typed wrong' } });
    expect(drivenAlike([ofVoid, entryOf(2, { body: { reason: 'lifted' } })], ofVoid)).toEqual([ofVoid]);
  });
});

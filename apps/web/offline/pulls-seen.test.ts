import { describe, expect, it } from 'vitest';
import type { OutboxEntry } from './outbox-entry';
import { pullsSeen } from './pulls-seen';
import { entryOf, pullOf } from './test-outbox';

const any = () => true;
const unsentAt = (minute: number) => pullOf(1, { id: '', recordedAt: `2026-03-02T11:0${minute}:00.000Z` });

describe('pullsSeen', () => {
  it('gives what waits the next numbers, in the order in which it was written down', () => {
    const entries = [
      entryOf(2, { shows: { pull: { ...unsentAt(2), peakKpa: 72 } } }),
      entryOf(1, { shows: { pull: { ...unsentAt(1), peakKpa: 71 } } }),
    ];
    const seen = pullsSeen([pullOf(2), pullOf(1)], entries, any);
    expect(seen.map(({ number, peakKpa, unsent }) => [number, peakKpa, unsent ?? false])).toEqual([
      [1, 61, false],
      [2, 62, false],
      [3, 71, true],
      [4, 72, true],
    ]);
  });

  it('shows a pull once: when sent before the list has it, and when stored while its answer was lost', () => {
    const made = pullOf(1);
    const sent = entryOf(1, { state: 'sent', answer: made, shows: { pull: made } });
    expect(pullsSeen([], [sent], any)).toEqual([made]);
    expect(pullsSeen([made], [sent], any)).toEqual([made]);
    const waiting = entryOf(1, { shows: { pull: { ...made, id: 'key-1' } } });
    expect(pullsSeen([made], [waiting], any)).toEqual([made]);
  });

  it('shows the pulls that were taken in from a log', () => {
    const entry = entryOf(1, { state: 'sent', answer: { items: [pullOf(1), pullOf(2)] } });
    expect(pullsSeen([], [entry], any).map((pull) => pull.number)).toEqual([1, 2]);
  });

  it('shows as void what was voided here, on record or not, before and after it was sent', () => {
    const voided = (pullId: string) => entryOf(2, { shows: { voided: { pullId, reason: 'lifted' } } });
    expect(pullsSeen([pullOf(1)], [voided('pull-1')], any)[0]?.voidReason).toBe('lifted');
    const waiting = entryOf(1, { shows: { pull: unsentAt(1) } });
    expect(pullsSeen([], [waiting, voided('key-1')], any)[0]?.voidReason).toBe('lifted');
    const sent = entryOf(1, { state: 'sent', answer: pullOf(1), shows: { pull: unsentAt(1) } });
    expect(pullsSeen([pullOf(1)], [sent, voided('key-1')], any)[0]?.voidReason).toBe('lifted');
  });

  describe('a car that was found sound here', () => {
    const marked = (pullId: string, change: Partial<OutboxEntry> = {}) =>
      entryOf(2, { shows: { foundSound: { pullId, note: 'hoses on', by: 'Ines Dorv' } }, ...change });
    const mark = {
      foundSoundAt: '2026-03-02T10:00:00.000Z',
      foundSoundNote: 'hoses on',
      foundSoundBy: 'Ines Dorv',
    };

    it('has the mark on its pull at once, on record or not, before and after it was sent', () => {
      expect(pullsSeen([pullOf(1), pullOf(2)], [marked('pull-1')], any)).toEqual([
        { ...pullOf(1), ...mark },
        pullOf(2),
      ]);
      const waiting = entryOf(1, { shows: { pull: unsentAt(1) } });
      expect(pullsSeen([], [waiting, marked('key-1')], any)).toMatchObject([mark]);
      const sent = entryOf(1, { state: 'sent', answer: pullOf(1), shows: { pull: unsentAt(1) } });
      expect(pullsSeen([pullOf(1)], [sent, marked('key-1', { state: 'sent' })], any)).toMatchObject([mark]);
    });

    it('keeps the mark of the book, and has none where the server refused it', () => {
      const onRecord = pullOf(1, { ...mark, foundSoundNote: 'gate moves freely' });
      expect(pullsSeen([onRecord], [marked('pull-1')], any)).toEqual([onRecord]);
      expect(pullsSeen([pullOf(1)], [marked('pull-1', { state: 'refused' })], any)).toEqual([pullOf(1)]);
    });

    it('has its mark beside the void of the same pull, which alone counts', () => {
      const voided = entryOf(3, { shows: { voided: { pullId: 'pull-1', reason: 'lifted' } } });
      const [pull] = pullsSeen([pullOf(1)], [marked('pull-1'), voided], any);
      expect(pull).toMatchObject({ ...mark, voidReason: 'lifted' });
    });
  });

  it('leaves out what belongs elsewhere', () => {
    const entry = entryOf(1, { shows: { pull: unsentAt(1) } });
    expect(pullsSeen([], [entry], (pull) => pull.presetId === 'another')).toEqual([]);
  });
});

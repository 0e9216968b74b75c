import type { OpenSession } from '@pullbook/contracts';
import { describe, expect, it } from 'vitest';
import { datesInName } from './dates-in-name.js';
import { suggestSessions, type FileFacts } from './suggest-sessions.js';

const session = (name: string, more: Partial<OpenSession> = {}): OpenSession => ({
  tuningSessionId: name,
  number: 1,
  place: 'Cell 1',
  startedAt: new Date(2026, 3, 14, 9, 0).toISOString(),
  visitId: `visit of ${name}`,
  visitNumber: 1,
  carId: `car of ${name}`,
  plate: 'KX 204',
  model: 'Estate',
  ...more,
});
const file = (fileName: string, more: Partial<FileFacts> = {}): FileFacts => ({
  fileName,
  writtenAt: null,
  carsOfRecipe: new Set(),
  ...more,
});
const first = session('first');
const other = session('other', { plate: 'LM-77 B', startedAt: new Date(2026, 3, 15, 13, 0).toISOString() });

describe('suggestSessions', () => {
  it('puts the car forward whose plate is in the name, however it is written there', () => {
    for (const name of ['kx204_run3.csv', 'run KX-204 b.csv', '2026-04-15 Kx 204.csv'])
      expect(suggestSessions(file(name), [first, other]).likelySessionId, name).toBe('first');
    expect(suggestSessions(file('lm 77 b.csv'), [first, other]).likelySessionId).toBe('other');
  });

  it('takes no plate out of a longer word', () => {
    expect(suggestSessions(file('akx2045.csv'), [first, other]).suggestions).toEqual([]);
  });

  it('goes by the hour in which the file was written, then by a date in its name', () => {
    const written = { writtenAt: new Date(2026, 3, 15, 14, 30) };
    expect(suggestSessions(file('log0001.csv', written), [first, other]).likelySessionId).toBe('other');
    expect(suggestSessions(file('20260414_0001.csv'), [first, other]).likelySessionId).toBe('first');
    const before = { writtenAt: new Date(2026, 3, 13, 14, 30) };
    expect(suggestSessions(file('log0001.csv', before), [first, other]).suggestions).toEqual([]);
  });

  it('puts none forward where two cars are as likely, and says what speaks for each', () => {
    const rival = session('rival', { plate: 'ZZ 901' });
    const { suggestions, likelySessionId } = suggestSessions(file('2026-04-14.csv'), [first, rival]);
    expect(likelySessionId).toBeNull();
    expect(suggestions.map(({ tuningSessionId }) => tuningSessionId)).toEqual(['first', 'rival']);
    expect(suggestions[0]?.reasons[0]?.text).toContain('the date in the file name');
  });

  it('lets the logger decide between cars, but puts none forward for it alone', () => {
    const rival = session('rival', { plate: 'ZZ 901' });
    const known = { carsOfRecipe: new Set([rival.carId]) };
    expect(suggestSessions(file('2026-04-14.csv', known), [first, rival]).likelySessionId).toBe('rival');
    const alone = suggestSessions(file('a.csv', known), [first, rival]);
    expect(alone.likelySessionId).toBeNull();
    expect(alone.suggestions).toHaveLength(1);
  });

  it('takes the latest session of the car that leads', () => {
    const later = {
      ...first,
      tuningSessionId: 'later',
      startedAt: new Date(2026, 3, 14, 15, 0).toISOString(),
    };
    expect(suggestSessions(file('KX204.csv'), [first, later]).likelySessionId).toBe('later');
  });

  it('suggests nothing without sessions', () => {
    expect(suggestSessions(file('KX204.csv'), [])).toEqual({ suggestions: [], likelySessionId: null });
  });
});

describe('datesInName', () => {
  it('reads ISO 8601 dates, extended and basic', () => {
    const day = { year: 2026, month: 4, day: 14 };
    for (const name of ['2026-04-14.csv', 'log_20260414_1530.csv', '2026.04.14 b.csv'])
      expect(datesInName(name), name).toEqual([day]);
  });

  it('gives both readings of a date that does not tell', () => {
    expect(datesInName('04-05-2026.csv')).toEqual([
      { year: 2026, month: 5, day: 4 },
      { year: 2026, month: 4, day: 5 },
    ]);
    expect(datesInName('14.04.2026.csv')).toEqual([{ year: 2026, month: 4, day: 14 }]);
  });

  it('takes no date that the calendar does not have, and none out of a longer number', () => {
    for (const name of ['2026-02-30.csv', '120260414.csv', '2026041.csv', ''])
      expect(datesInName(name), name).toEqual([]);
  });
});

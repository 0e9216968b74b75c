import { expect, test } from 'vitest';
import { writeInstant, writeInstantAndZone } from './write-instant.js';

const winter = '2026-11-25T23:30:00.000Z';
const summer = '2026-07-01T08:05:00.000Z';

// Offsets by the IANA time zone database: Vienna is an hour ahead of UTC, two in summer; New York five behind, four.
test('writeInstant writes day and time of the workshop’s zone, in winter and in summer', () => {
  expect(writeInstant(winter, 'Europe/Vienna')).toBe('Thu, 26 Nov 2026, 00:30');
  expect(writeInstant(summer, 'Europe/Vienna')).toBe('Wed, 1 Jul 2026, 10:05');
  expect(writeInstant(winter, 'America/New_York')).toBe('Wed, 25 Nov 2026, 18:30');
});

test('writeInstantAndZone names the zone that held at that instant', () => {
  expect(writeInstantAndZone(winter, 'Europe/Vienna')).toMatch(/^Thu, 26 Nov 2026, 00:30 (CET|GMT\+1)$/);
  expect(writeInstantAndZone(summer, 'Europe/Vienna')).toMatch(/^Wed, 1 Jul 2026, 10:05 (CEST|GMT\+2)$/);
});

test('without a zone it is that of the machine', () => {
  const { timeZone } = new Intl.DateTimeFormat().resolvedOptions();
  expect(writeInstantAndZone(winter, '')).toBe(writeInstantAndZone(winter, timeZone));
});

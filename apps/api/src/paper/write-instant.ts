const DAY = new Intl.DateTimeFormat('en-GB', {
  weekday: 'short',
  day: 'numeric',
  month: 'short',
  year: 'numeric',
});
const TIME = { hour: '2-digit', minute: '2-digit', hourCycle: 'h23' } as const;
const CLOCK = new Intl.DateTimeFormat('en-GB', TIME);
const CLOCK_AND_ZONE = new Intl.DateTimeFormat('en-GB', { ...TIME, timeZoneName: 'short' });

/** An instant as printed for the workshop: 'Wed, 25 Nov 2026, 09:30', in the time zone of the book's machine. */
export function writeInstant(iso: string): string {
  const instant = new Date(iso);
  return `${DAY.format(instant)}, ${CLOCK.format(instant)}`;
}

/** The same with the zone's name, for readers who may be elsewhere. */
export function writeInstantAndZone(iso: string): string {
  const instant = new Date(iso);
  return `${DAY.format(instant)}, ${CLOCK_AND_ZONE.format(instant)}`;
}

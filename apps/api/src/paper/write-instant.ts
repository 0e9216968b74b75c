const DAY = { weekday: 'short', day: 'numeric', month: 'short', year: 'numeric' } as const;
const TIME = { hour: '2-digit', minute: '2-digit', hourCycle: 'h23' } as const;

/**
 * An instant as printed for the workshop: 'Wed, 25 Nov 2026, 09:30'.
 *
 * @param timeZone the workshop's, as the IANA names it; empty for that of the book's machine
 */
export function writeInstant(iso: string, timeZone: string): string {
  return write(iso, timeZone, TIME);
}

/** The same with the zone beside it, for readers who may be elsewhere: 'Wed, 25 Nov 2026, 09:30 CET'. */
export function writeInstantAndZone(iso: string, timeZone: string): string {
  return write(iso, timeZone, { ...TIME, timeZoneName: 'short' });
}

function write(iso: string, timeZone: string, clock: Intl.DateTimeFormatOptions): string {
  const instant = new Date(iso);
  const place = timeZone === '' ? {} : { timeZone };
  const day = new Intl.DateTimeFormat('en-GB', { ...DAY, ...place }).format(instant);
  return `${day}, ${new Intl.DateTimeFormat('en-GB', { ...clock, ...place }).format(instant)}`;
}

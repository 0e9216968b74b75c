const DAY = new Intl.DateTimeFormat('en-GB', {
  weekday: 'short',
  day: 'numeric',
  month: 'short',
  year: 'numeric',
});
const TIME = new Intl.DateTimeFormat('en-GB', { hour: '2-digit', minute: '2-digit', hourCycle: 'h23' });

/** An instant as printed: 'Wed, 25 Nov 2026, 09:30', in the time zone of the machine that runs the book. */
export function writeInstant(iso: string): string {
  const instant = new Date(iso);
  return `${DAY.format(instant)}, ${TIME.format(instant)}`;
}

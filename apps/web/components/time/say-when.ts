const clock = new Intl.DateTimeFormat('en-GB', { hour: '2-digit', minute: '2-digit' });
const weekday = new Intl.DateTimeFormat('en-GB', { weekday: 'short' });
const dayMonth = new Intl.DateTimeFormat('en-GB', { day: 'numeric', month: 'short' });
const dayMonthYear = new Intl.DateTimeFormat('en-GB', { day: 'numeric', month: 'short', year: 'numeric' });
const longDay = new Intl.DateTimeFormat('en-GB', { weekday: 'long', day: 'numeric', month: 'long' });

const dayMs = 86_400_000;

function startOfDay(at: Date): number {
  return new Date(at.getFullYear(), at.getMonth(), at.getDate()).getTime();
}

/** An instant as people in the workshop say it: 'today 16:00', 'Thu 09:00', '14 Apr 09:00', with the year if it is another. */
export function sayWhen(instant: string, now: Date): string {
  const at = new Date(instant);
  const days = Math.round((startOfDay(at) - startOfDay(now)) / dayMs);
  const time = clock.format(at);
  if (days === 0) return `today ${time}`;
  if (days === 1) return `tomorrow ${time}`;
  if (days === -1) return `yesterday ${time}`;
  if (days > 1 && days < 7) return `${weekday.format(at)} ${time}`;
  const date = at.getFullYear() === now.getFullYear() ? dayMonth.format(at) : dayMonthYear.format(at);
  return `${date} ${time}`;
}

/** '14 Apr 2026' */
export function sayDate(instant: string): string {
  return dayMonthYear.format(new Date(instant));
}

/** 'Tuesday 14 April' */
export function sayLongDay(at: Date): string {
  return longDay.format(at);
}

/** Whether the instant is on the same day as now, here. */
export function isToday(instant: string, now: Date): boolean {
  return startOfDay(new Date(instant)) === startOfDay(now);
}

/** An instant as a local date and time for an input of that kind: '2026-04-14T09:00'. */
export function toLocalInput(instant: string | null): string {
  if (instant === null) return '';
  const at = new Date(instant);
  const two = (value: number) => String(value).padStart(2, '0');
  return `${at.getFullYear()}-${two(at.getMonth() + 1)}-${two(at.getDate())}T${two(at.getHours())}:${two(at.getMinutes())}`;
}

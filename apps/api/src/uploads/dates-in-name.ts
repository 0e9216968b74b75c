/** A day of the calendar. */
export interface CalendarDay {
  readonly year: number;
  readonly month: number;
  readonly day: number;
}

/** ISO 8601 calendar dates, extended and basic; separators as file systems allow them. */
const YEAR_FIRST = /(?<!\d)(?<year>20\d\d)(?<mark>[-_. ]?)(?<month>\d\d)\k<mark>(?<day>\d\d)(?!\d)/g;
const DAY_FIRST = /(?<!\d)(?<day>\d\d)[-_.](?<month>\d\d)[-_.](?<year>20\d\d)(?!\d)/g;

/**
 * The days that a file name may mean. Of 04-05-2026 both readings are given, because it does not tell which it is.
 * Source: ISO 8601-1 for year first; day first and month first are common practice, no source.
 */
export function datesInName(fileName: string): CalendarDay[] {
  const found: CalendarDay[] = [];
  for (const { groups = {} } of fileName.matchAll(YEAR_FIRST)) found.push(dayOf(groups));
  for (const { groups = {} } of fileName.matchAll(DAY_FIRST)) {
    const one = dayOf(groups);
    found.push(one);
    if (one.day !== one.month) found.push({ year: one.year, month: one.day, day: one.month });
  }
  return found.filter(isInCalendar);
}

function dayOf({ year, month, day }: Readonly<Record<string, string | undefined>>): CalendarDay {
  return { year: Number(year), month: Number(month), day: Number(day) };
}

function isInCalendar({ year, month, day }: CalendarDay): boolean {
  const at = new Date(Date.UTC(year, month - 1, day));
  return at.getUTCMonth() === month - 1 && at.getUTCDate() === day;
}

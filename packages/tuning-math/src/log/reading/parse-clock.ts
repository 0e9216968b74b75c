const CLOCK =
  /^(?:\d{1,4}[-./]\d{1,2}[-./]\d{1,4}[T ,]?\s*)?(?:(\d{1,2}):)?(\d{1,2}):(\d{2}(?:[.,:]\d+)?)\s*([ap]m)?(?:Z|[+-]\d\d:?\d\d)?$/i;

/**
 * Seconds since midnight of a time of day (`14:03:09.250`, `9:03:09,25 PM`, with or without a date before
 * it), or of a stopwatch (`3:09.250`); null for anything else. The date is left out: a log that runs past
 * midnight shows it by its clock falling.
 *
 * @example parseClock('01:02:03,5') // 3723.5
 * Source: the field order of ISO 8601-1; the other spellings are common practice, no source.
 */
export function parseClock(text: string): number | null {
  const match = CLOCK.exec(text.trim());
  if (match === null) return null;
  const [, hourText = '0', minuteText = '', secondText = '', half = ''] = match;
  const second = Number(secondText.replace(/[,:]/, '.'));
  const minute = Number(minuteText);
  if (second >= 61 || minute >= 60) return null;
  const hour = half === '' ? Number(hourText) : (Number(hourText) % 12) + (/p/i.test(half) ? 12 : 0);
  return hour * 3600 + minute * 60 + second;
}

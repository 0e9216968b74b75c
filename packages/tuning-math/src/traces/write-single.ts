const FEWEST_DIGITS = 6;
const MOST_DIGITS = 9;

/**
 * A number of single precision as the shortest decimal that reads back as the same one; empty for NaN.
 * Nine significant digits always suffice (IEEE 754-2019, 5.12.2).
 *
 * @example writeSingle(Math.fround(1.1)) // '1.1'
 */
export function writeSingle(value: number): string {
  if (Number.isNaN(value)) return '';
  const single = Math.fround(value);
  for (let digits = FEWEST_DIGITS; digits < MOST_DIGITS; digits += 1) {
    const short = Number(single.toPrecision(digits));
    if (Math.fround(short) === single) return String(short);
  }
  return String(Number(single.toPrecision(MOST_DIGITS)));
}

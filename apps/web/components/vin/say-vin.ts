const vinLength = 17;
const checkPlace = 8;
const weights = [8, 7, 6, 5, 4, 3, 2, 10, 0, 9, 8, 7, 6, 5, 4, 3, 2];
const rows = ['ABCDEFGH', 'JKLMN', 'PR', 'STUVWXYZ'];
const firstValues: readonly number[] = [1, 1, 7, 2];

/** Value of a VIN character: digits count themselves, letters by the table of 49 CFR 565.15; null for I, O, Q and the rest. */
function valueOf(character: string): number | null {
  if (/^\d$/.test(character)) return Number(character);
  for (const [index, row] of rows.entries()) {
    const place = row.indexOf(character);
    if (place < 0) continue;
    const value = (firstValues[index] ?? 0) + place;
    // P is 7, R is 9: Q between them is never used.
    return character === 'R' ? 9 : value;
  }
  return null;
}

export type VinCheck = 'incomplete' | 'not-a-vin' | 'agrees' | 'differs';

/**
 * Whether the ninth character of a VIN is the check digit of the others (49 CFR 565.15; optional in ISO 3779).
 * A hint and never a rule: many markets do not use it.
 */
export function checkVin(typed: string): VinCheck {
  const vin = typed.trim().toUpperCase();
  const values = [...vin].map(valueOf);
  if (vin.length > vinLength || values.some((value) => value === null)) return 'not-a-vin';
  if (vin.length < vinLength) return 'incomplete';
  const sum = values.reduce<number>((total, value, index) => total + (value ?? 0) * (weights[index] ?? 0), 0);
  const remainder = sum % 11;
  const wanted = remainder === 10 ? 'X' : String(remainder);
  return vin[checkPlace] === wanted ? 'agrees' : 'differs';
}

/** What to say below the field while a VIN is being typed; nothing while it is empty. */
export function sayVin(typed: string): string | undefined {
  if (typed.trim() === '') return undefined;
  const length = typed.trim().length;
  return {
    incomplete: `${length} of 17 characters.`,
    'not-a-vin': 'A VIN has 17 letters and digits, without I, O and Q.',
    agrees: '✓ The check digit agrees.',
    differs: 'The check digit differs: look once more. Not every market uses it.',
  }[checkVin(typed)];
}

/** 49 CFR 565.15, table III: what each letter of a VIN counts. */
const letterValues: Record<string, number> = {
  ...{ A: 1, B: 2, C: 3, D: 4, E: 5, F: 6, G: 7, H: 8 },
  ...{ J: 1, K: 2, L: 3, M: 4, N: 5, P: 7, R: 9 },
  ...{ S: 2, T: 3, U: 4, V: 5, W: 6, X: 7, Y: 8, Z: 9 },
};
/** 49 CFR 565.15, table IV: what each place counts; the ninth is the check digit's own. */
const placeWeights = [8, 7, 6, 5, 4, 3, 2, 10, 0, 9, 8, 7, 6, 5, 4, 3, 2];
const checkPlace = 8;

/**
 * Whether the ninth place of a VIN is the check digit that the other places make. A hint against slips of the pen, not
 * a rule: not every market uses it.
 * @param vin 17 letters and digits, capitals, without I, O and Q; null where none is known
 * Source: 49 CFR 565.15 (c), remainder of the weighted sum divided by 11, X for ten.
 */
export function vinCheckDigit(vin: string | null): 'none' | 'agrees' | 'differs' {
  if (vin === null) return 'none';
  const sum = [...vin].reduce((total, sign, place) => total + valueOf(sign) * (placeWeights[place] ?? 0), 0);
  const wanted = sum % 11 === 10 ? 'X' : String(sum % 11);
  return vin[checkPlace] === wanted ? 'agrees' : 'differs';
}

function valueOf(sign: string): number {
  return letterValues[sign] ?? Number(sign);
}

/** A chance as people read it: '<1 %', '2.4 %', '12 %', '>99 %'; one decimal where it decides. */
export function sayChance(probability: number): string {
  const percent = probability * 100;
  if (percent < 0.95) return '<1 %';
  if (percent >= 99.5) return '>99 %';
  const digits = percent < 9.95 ? 1 : 0;
  return `${percent.toFixed(digits).replace(/\.0$/, '')} %`;
}

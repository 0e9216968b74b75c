/** A chance as people read it: '<1 %', '3 %', '>99 %'. */
export function sayChance(probability: number): string {
  const percent = probability * 100;
  if (percent < 0.5) return '<1 %';
  return percent >= 99.5 ? '>99 %' : `${Math.round(percent)} %`;
}

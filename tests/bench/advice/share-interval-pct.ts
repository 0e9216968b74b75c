/** 95 % interval of a share that was counted. Source: Wilson, J. Am. Stat. Assoc. 22 (1927). */
export function shareIntervalPct(pct: number, count: number): [number, number] {
  const z = 1.959964;
  const share = pct / 100;
  const shrink = 1 + (z * z) / count;
  const middle = (share + (z * z) / (2 * count)) / shrink;
  const half = (z / shrink) * Math.sqrt((share * (1 - share)) / count + (z / (2 * count)) ** 2);
  return [100 * (middle - half), 100 * (middle + half)];
}

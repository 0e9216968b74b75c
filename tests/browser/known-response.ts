/** The response that the browser tests drive on: the test knows it, the product does not. Peak, kPa gauge. */
export function trueMeanPeakKpa(dutyPct: number): number {
  return 58 + 92 / (1 + Math.exp(-(dutyPct - 46) / 9));
}

/** Pull-to-pull scatter of the test's car, as factors in turn; mean 1. */
const scatter = [1.004, 0.995, 1.001, 0.998, 1.006, 0.996] as const;

/** What the n-th pull (from 0) reads at this duty, to a tenth of a kPa. */
export function readingKpa(dutyPct: number, n: number): number {
  const factor = scatter[n % scatter.length] ?? 1;
  return Math.round(trueMeanPeakKpa(dutyPct) * factor * 10) / 10;
}

/**
 * A log of one full-load pull at 50 Hz: cruise, throttle opened at 2 s, boost up along a half cosine to `peakKpa` over
 * 1.5 s, then evenly down by 12 % towards the rev limit, throttle closed at 8 s. A sound filter leaves the peak
 * within one per cent.
 */
export function logOfPull(peakKpa: number): string {
  const rows = ['Time (s),Engine speed (r/min),Throttle (%),Boost (kPa)'];
  for (let n = 0; n <= 500; n += 1) {
    const t = n / 50;
    const isOpen = t >= 2 && t < 8;
    const rise = Math.min(1, Math.max(0, (t - 2) / 1.5));
    const taper = 1 - 0.12 * Math.max(0, (t - 3.5) / 4.5);
    const boost = isOpen ? peakKpa * 0.5 * (1 - Math.cos(Math.PI * rise)) * taper : 0;
    const rpm = isOpen ? 2200 + 650 * (t - 2) : t < 2 ? 2200 : 2000;
    rows.push(`${t.toFixed(2)},${rpm.toFixed(0)},${isOpen ? 100 : 12},${boost.toFixed(2)}`);
  }
  return `${rows.join('\r\n')}\r\n`;
}

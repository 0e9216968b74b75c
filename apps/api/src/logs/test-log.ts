/** One pull of `testLog`: where it peaks, kPa gauge. */
interface TestPull {
  readonly peakKpa: number;
}

const RATE_HZ = 50;
const IDLE_S = 4;
const PULL_S = 6;

/**
 * A log as text: idle, then for each pull full throttle from 2000 to 6500 r/min while boost rises over a second to its
 * peak and settles 3 kPa below it, then off the throttle. 50 samples a second; boost with one decimal.
 */
export function testLog(pulls: readonly TestPull[], boostHeader = 'Boost (kPa)'): string {
  const rows = [`Time (s),RPM (1/min),Throttle (%),${boostHeader}`];
  let row = 0;
  const write = (rpm: number, throttlePct: number, boostKpa: number): void => {
    rows.push(`${(row / RATE_HZ).toFixed(2)},${rpm.toFixed(0)},${throttlePct},${boostKpa.toFixed(1)}`);
    row += 1;
  };
  const idle = (): void => {
    for (let sample = 0; sample < IDLE_S * RATE_HZ; sample += 1) write(1500, 8, -40);
  };
  idle();
  for (const { peakKpa } of pulls) {
    for (let sample = 0; sample < PULL_S * RATE_HZ; sample += 1) {
      const timeS = sample / RATE_HZ;
      write(2000 + 750 * timeS, 100, boostAt(timeS, peakKpa));
    }
    idle();
  }
  return `${rows.join('\n')}\n`;
}

/** Rises as 1 - exp, holds its peak for half a second, then settles. */
function boostAt(timeS: number, peakKpa: number): number {
  const risen = peakKpa * (1 - Math.exp(-timeS / 0.4));
  if (timeS < 2.5) return Math.min(risen, peakKpa);
  if (timeS < 3) return peakKpa;
  return peakKpa - 3 * (1 - Math.exp(-(timeS - 3) / 0.3));
}

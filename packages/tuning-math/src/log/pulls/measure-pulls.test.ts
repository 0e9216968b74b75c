import { describe, expect, it } from 'vitest';
import { analyseLog } from '../analyse-log.js';

const RATE_HZ = 10;
const PULL_S = 8;
const CYCLE_S = 20;

/** Two pulls at 10 Hz in whole kPa, each with its own course of boost. */
function twoPulls(courses: ReadonlyArray<(sinceS: number) => number>): string {
  const rows = ['Time (s),RPM (1/min),Throttle (%),Boost (kPa)'];
  for (let row = 0; row < courses.length * CYCLE_S * RATE_HZ; row += 1) {
    const sinceS = (row / RATE_HZ) % CYCLE_S;
    const onS = sinceS - 6;
    const isOn = onS >= 0 && onS < PULL_S;
    const course = courses[Math.floor(row / RATE_HZ / CYCLE_S)] ?? (() => 0);
    const boostKpa = Math.round(isOn ? course(onS) : -40);
    rows.push(
      `${(row / RATE_HZ).toFixed(2)},${isOn ? 2000 + 500 * onS : 1500},${isOn ? 100 : 8},${boostKpa.toFixed(0)}`,
    );
  }
  return `${rows.join('\n')}\n`;
}

/** Cut off in a steep rise. */
const cutOff = (sinceS: number): number => Math.min(40 * sinceS, 110);
/** Comes to rest by itself, as it would at 20 kPa a second less each second. */
const slowed =
  (topKpa: number) =>
  (sinceS: number): number =>
    topKpa * (1 - (1 - Math.min(sinceS / 6, 1)) ** 2);
const flagged = (csv: string): boolean[] =>
  analyseLog(csv).pulls.map(({ reasons }) => reasons.some(({ code }) => code === 'sensor-full-scale'));

describe('measurePulls', () => {
  it('takes the full scale that one pull shows for that of the log', () => {
    expect(flagged(twoPulls([slowed(110), slowed(110)]))).toEqual([false, false]);
    expect(flagged(twoPulls([cutOff, slowed(110)]))).toEqual([true, true]);
    expect(flagged(twoPulls([slowed(110), cutOff]))).toEqual([true, true]);
  });

  it('leaves a pull alone that topped out elsewhere', () => {
    expect(flagged(twoPulls([cutOff, slowed(104)]))).toEqual([true, false]);
    expect(flagged(twoPulls([cutOff, slowed(116)]))).toEqual([true, false]);
  });
});

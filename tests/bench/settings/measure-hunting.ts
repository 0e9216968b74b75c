import { drawBetween, drawNormal, seededRandom } from '@pullbook/practice-car';
import { analyseLog } from '@pullbook/tuning-math';
import { quantileOf } from './sorted-quantile.js';

/** How closely the hunting of one log was read. */
export interface HuntingRow {
  /** Whether the pull and its hunting were found at all. */
  readonly isFound: boolean;
  readonly frequencyMissRatio: number;
  readonly dampingMiss: number;
}

const RATE_HZ = 50;
const STEP_S = 0.001;
const LEAD_S = 2;
const PULL_S = 7;

/**
 * One closed-loop pull at 50 Hz whose loop is known: a second-order system that follows a target rising in 0.6 to
 * 1.6 s, so that what swings after it is a free oscillation of its own frequency (0.7 to 2.8 Hz: a shaft that takes
 * tenths of a second to answer) and damping ratio (0.02 to 0.3; a better damped one does not hunt, see
 * `adviseCorrection`). Boost sags by up to 6 % to the rev limit; sensor noise 0.2 to 0.8 kPa, steps of 0.1 kPa.
 */
export function measureHunting(seed: number): HuntingRow {
  const random = seededRandom(seed * 41 + 9);
  const loop = {
    frequencyHz: drawBetween(random, 0.7, 2.8),
    dampingRatio: drawBetween(random, 0.02, 0.3),
    targetKpa: drawBetween(random, 80, 180),
    riseS: drawBetween(random, 0.6, 1.6),
    sagRatio: drawBetween(random, 0, 0.06),
  };
  const noiseKpa = drawBetween(random, 0.2, 0.8);
  const boost = closedLoop(loop);
  const lines = ['Time (s),Engine speed (rpm),Throttle (%),Boost (kPa)'];
  for (let row = 0; row < (LEAD_S + PULL_S + 1) * RATE_HZ; row += 1) {
    const since = row / RATE_HZ - LEAD_S;
    const isPull = since >= 0 && since < PULL_S;
    const rpm = 2200 + (4600 * Math.min(PULL_S, Math.max(0, since))) / PULL_S;
    const level = isPull ? boost(since) : 0;
    const read = Math.round(10 * (level + noiseKpa * drawNormal(random))) / 10;
    lines.push(`${(row / RATE_HZ).toFixed(3)},${rpm.toFixed(0)},${isPull ? 100 : 10},${read.toFixed(1)}`);
  }
  const hunting = analyseLog(lines.join('\n')).pulls[0]?.hunting ?? null;
  if (hunting === null || hunting.dampingRatio === null)
    return { isFound: false, frequencyMissRatio: Infinity, dampingMiss: Infinity };
  const dampedHz = loop.frequencyHz * Math.sqrt(1 - loop.dampingRatio ** 2);
  return {
    isFound: true,
    frequencyMissRatio: hunting.frequencyHz / dampedHz - 1,
    dampingMiss: hunting.dampingRatio - loop.dampingRatio,
  };
}

interface Loop {
  readonly frequencyHz: number;
  readonly dampingRatio: number;
  readonly targetKpa: number;
  readonly riseS: number;
  readonly sagRatio: number;
}

/** Boost over time since full load: x'' + 2 z w x' + w² x = w² r, r rising in a straight line, then sagging. */
function closedLoop({
  frequencyHz,
  dampingRatio,
  targetKpa,
  riseS,
  sagRatio,
}: Loop): (sinceS: number) => number {
  const omega = 2 * Math.PI * frequencyHz;
  const reference = (sinceS: number): number => {
    if (sinceS < riseS) return (targetKpa * sinceS) / riseS;
    return targetKpa * (1 - (sagRatio * (sinceS - riseS)) / (PULL_S - riseS));
  };
  const samples: number[] = [];
  let [x, v] = [0, 0];
  for (let step = 0; step <= PULL_S / STEP_S; step += 1) {
    samples.push(x);
    // Semi-implicit Euler at 1 ms: frequency and damping within 1e-4 of the loop's for these frequencies.
    v += STEP_S * (omega * omega * (reference(step * STEP_S) - x) - 2 * dampingRatio * omega * v);
    x += STEP_S * v;
  }
  return (sinceS) => samples[Math.round(sinceS / STEP_S)] ?? 0;
}

/** The rows of all logs as figures. */
export function scoreHunting(rows: readonly HuntingRow[]): {
  readonly logs: number;
  readonly found: number;
  readonly frequencyHeld: number;
  readonly dampingHeld: number;
  readonly p95FrequencyMissRatio: number;
  readonly p95DampingMiss: number;
} {
  const found = rows.filter((row) => row.isFound);
  const frequencies = found.map((row) => Math.abs(row.frequencyMissRatio));
  const dampings = found.map((row) => Math.abs(row.dampingMiss));
  return {
    logs: rows.length,
    found: found.length,
    frequencyHeld: frequencies.filter((miss) => miss <= 0.05).length,
    dampingHeld: dampings.filter((miss) => miss <= 0.05).length,
    p95FrequencyMissRatio: quantileOf(frequencies, 0.95),
    p95DampingMiss: quantileOf(dampings, 0.95),
  };
}

import { analyseLog, type LogPull } from '@pullbook/tuning-math';
import { describe, expect, it } from 'vitest';
import { outsideCheck } from '../outside-check.js';
import { madeLog, rpmAt, START_S } from './made-log.js';

/**
 * Second-order step responses: overshoot 100·exp(-πζ/√(1-ζ²)), ω·t_p = π/√(1-ζ²), ω·t_r (10 % to 90 %).
 * The rise column is the table of control textbooks (1.104, 1.203, 1.321, 1.463, 1.638, 1.854, 2.126, …,
 * for example Nise, Control Systems Engineering, figure of normalised rise time), the others closed form.
 * Settled boost is by definition the mean over a second from where boost enters a band of 2 %, so it may lie
 * up to 1 % from the final value: that is what the tolerances leave room for.
 */
const TABLE = [
  { zeta: 0.3, overshootPct: 37.233, peakOmegaS: 3.2933, riseOmegaS: 1.3213 },
  { zeta: 0.4, overshootPct: 25.383, peakOmegaS: 3.4278, riseOmegaS: 1.4635 },
  { zeta: 0.5, overshootPct: 16.303, peakOmegaS: 3.6276, riseOmegaS: 1.6376 },
  { zeta: 0.6, overshootPct: 9.478, peakOmegaS: 3.927, riseOmegaS: 1.8541 },
  { zeta: 0.7, overshootPct: 4.599, peakOmegaS: 4.3991, riseOmegaS: 2.1262 },
  { zeta: 0.8, overshootPct: 1.516, peakOmegaS: 5.236, riseOmegaS: 2.4675 },
];
const OMEGA = 4;
const FINAL_KPA = 120;

function stepResponse(zeta: number, omega: number): (sinceS: number) => number {
  const root = Math.sqrt(1 - zeta * zeta);
  return (sinceS) => {
    const angle = omega * root * sinceS;
    const swing = Math.cos(angle) + (zeta / root) * Math.sin(angle);
    return FINAL_KPA * (1 - Math.exp(-zeta * omega * sinceS) * swing);
  };
}

function onlyPull(csv: string): LogPull {
  const { pulls } = analyseLog(csv);
  expect(pulls).toHaveLength(1);
  return pulls[0] as LogPull;
}

const TEXTBOOK =
  'step response of a second-order system: closed form, and the 10-90 % table of control textbooks (Nise)';
const IEEE = 'IEEE Std 181-2011, reference levels (from memory)';

for (const row of TABLE) {
  outsideCheck(
    {
      id: `logs/step-response-${row.zeta}`,
      checks: `overshoot within 1.2 points, peak time within 0.02 s, rise within 4 % at damping ${row.zeta}`,
      source: TEXTBOOK,
      origin: 'recomputed',
    },
    () => {
      const csv = madeLog({ rateHz: 100, durationS: 12, boostKpa: stepResponse(row.zeta, OMEGA) });
      const pull = onlyPull(csv);
      expect(Math.abs((pull.overshootPct ?? NaN) - row.overshootPct)).toBeLessThan(1.2);
      expect(Math.abs((pull.peakTimeS ?? NaN) - START_S - row.peakOmegaS / OMEGA)).toBeLessThan(0.02);
      expect(Math.abs((pull.riseTimeS ?? NaN) / (row.riseOmegaS / OMEGA) - 1)).toBeLessThan(0.04);
      expect(Math.abs((pull.settledKpa ?? NaN) - FINAL_KPA)).toBeLessThan(0.01 * FINAL_KPA);
    },
  );
}

outsideCheck(
  {
    id: 'logs/hunting-from-swings',
    checks: 'frequency within 3 % and damping ratio within 0.015 at damping 0.1',
    source: 'logarithmic decrement 2πζ/√(1-ζ²) of a second-order system',
    origin: 'exact',
  },
  () => {
    const pull = onlyPull(madeLog({ rateHz: 100, durationS: 14, boostKpa: stepResponse(0.1, OMEGA) }));
    const frequencyHz = (OMEGA * Math.sqrt(1 - 0.01)) / (2 * Math.PI);
    expect(Math.abs((pull.hunting?.frequencyHz ?? NaN) / frequencyHz - 1)).toBeLessThan(0.03);
    expect(Math.abs((pull.hunting?.dampingRatio ?? NaN) - 0.1)).toBeLessThan(0.015);
  },
);

outsideCheck(
  {
    id: 'logs/first-order-rise',
    checks: 'rise time ln 9 · τ = 2.19722 τ within 4 %, no overshoot, no hunting',
    source: 'step response of a first-order system',
    origin: 'exact',
  },
  () => {
    const tauS = 0.5;
    const boostKpa = (sinceS: number): number => FINAL_KPA * (1 - Math.exp(-sinceS / tauS));
    const pull = onlyPull(madeLog({ rateHz: 100, durationS: 10, boostKpa }));
    expect(Math.abs((pull.riseTimeS ?? NaN) / (2.19722 * tauS) - 1)).toBeLessThan(0.04);
    expect(Math.abs(pull.overshootPct ?? NaN)).toBeLessThan(1.2);
    expect(pull.hunting).toBeNull();
  },
);

outsideCheck(
  {
    id: 'logs/overshoot-of-gauge-boost',
    checks: 'overshoot and rise refer to settled gauge boost, not to the swing from the boost before',
    source: IEEE,
    origin: 'from memory',
  },
  () => {
    const step = stepResponse(0.5, OMEGA);
    const boostKpa = (sinceS: number): number => 0.05 * FINAL_KPA + 0.95 * step(sinceS);
    const pull = onlyPull(madeLog({ rateHz: 100, durationS: 12, boostKpa, beforeKpa: 0.05 * FINAL_KPA }));
    expect(Math.abs((pull.overshootPct ?? NaN) - 0.95 * 16.303)).toBeLessThan(0.5);
  },
);

for (const rateHz of [20, 50, 100, 200]) {
  outsideCheck(
    {
      id: `logs/peak-of-known-wave-${rateHz}-hz`,
      checks: `crest of a parabola on a plateau within 0.1 kPa and 5 ms at ${rateHz} Hz`,
      source: 'a wave form of known shape: its top lies between samples and is known exactly',
      origin: 'exact',
    },
    () => {
      const crestS = 2.3371;
      const boostKpa = (sinceS: number): number => {
        const ramp = Math.min(1, sinceS / 1.5) * 100;
        return ramp + Math.max(0, 30 - 160 * (sinceS - crestS) ** 2);
      };
      const pull = onlyPull(madeLog({ rateHz, durationS: 8, boostKpa }));
      expect(Math.abs((pull.peakKpa ?? NaN) - 130)).toBeLessThan(0.1);
      expect(Math.abs((pull.peakTimeS ?? NaN) - START_S - crestS)).toBeLessThan(0.005);
    },
  );
}

describe('a pull of known course', () => {
  it('has its onset at the engine speed where 90 % of target is reached', () => {
    const boostKpa = (sinceS: number): number => Math.min(120, 60 * sinceS);
    const csv = madeLog({ rateHz: 50, durationS: 8, boostKpa });
    const [pull] = analyseLog(csv, { targetKpa: 100 }).pulls;
    expect(Math.abs((pull?.onsetRpm ?? NaN) - rpmAt(1.5))).toBeLessThan(3);
    expect(pull?.onsetBasis).toBe('target');
  });

  it('tapers by the slope that it was made with', () => {
    const boostKpa = (sinceS: number): number =>
      120 * (1 - Math.exp(-sinceS / 0.2)) - 4 * Math.max(0, (rpmAt(sinceS) - 3000) / 1000);
    const [pull] = analyseLog(madeLog({ rateHz: 50, durationS: 9, boostKpa })).pulls;
    expect(Math.abs((pull?.taperKpaPer1000Rpm ?? NaN) - 4)).toBeLessThan(0.4);
  });
});

import { describe, expect, it } from 'vitest';
import { analyseLog } from '../analyse-log.js';

interface Shown {
  readonly boost: (sinceS: number) => number;
  readonly rateHz: number;
  readonly stepKpa: number;
  readonly noiseKpa?: number;
  readonly fullScaleKpa?: number;
}

const PULL_S = 8;

/** One pull as a logger with these steps, noise and full scale writes it; the noise is a fixed pattern. */
function codesOf({ boost, rateHz, stepKpa, noiseKpa = 0, fullScaleKpa = Infinity }: Shown): string[] {
  const rows = ['Time (s),RPM (1/min),Throttle (%),Boost (kPa)'];
  for (let row = 0; row < 13 * rateHz; row += 1) {
    const sinceS = row / rateHz - 3;
    const isOn = sinceS >= 0 && sinceS < PULL_S;
    // Three times the usual spread apart at most, and never the same twice in a row.
    const noise = noiseKpa * Math.SQRT2 * Math.sin(2.4 * row + 0.7 * Math.sin(row));
    const kpa = Math.min((isOn ? boost(sinceS) : -40) + noise, fullScaleKpa);
    const shown = (Math.round(kpa / stepKpa) * stepKpa).toFixed(2);
    rows.push(`${(row / rateHz).toFixed(3)},${isOn ? 2000 + 560 * sinceS : 1500},${isOn ? 100 : 8},${shown}`);
  }
  const [pull] = analyseLog(`${rows.join('\n')}\n`).pulls;
  return (pull?.reasons ?? []).map(({ code }) => code);
}

const settling = (tauS: number) => (sinceS: number) => 130 * (1 - Math.exp(-sinceS / tauS));
const easing = (sinceS: number) => 65 * (1 - Math.cos(Math.PI * Math.min(sinceS / 3, 1)));
const shapes: ReadonlyArray<readonly [string, (sinceS: number) => number]> = [
  ['settles over 0.6 s', settling(0.6)],
  ['settles over 0.3 s', settling(0.3)],
  ['settles over 0.15 s', settling(0.15)],
  ['eases into its level over 3 s', easing],
];
const loggers = [20, 50, 100, 200].flatMap((rateHz) =>
  [0.01, 0.1, 0.5, 1].map((stepKpa) => ({ rateHz, stepKpa })),
);

describe('findFlatTop', () => {
  it.each(shapes)('leaves boost alone that %s and then stands without any noise', (_name, boost) => {
    for (const logger of loggers.filter(({ rateHz }) => rateHz >= 50))
      expect(codesOf({ boost, ...logger }), JSON.stringify(logger)).not.toContain('sensor-full-scale');
  });

  it.each(shapes)('leaves boost alone that %s under noise', (_name, boost) => {
    for (const logger of loggers.filter(({ stepKpa }) => stepKpa <= 0.1))
      expect(codesOf({ boost, noiseKpa: 0.4, ...logger }), JSON.stringify(logger)).not.toContain(
        'sensor-full-scale',
      );
  });

  it.each([100, 110, 115])('flags a rise that is cut off at %d kPa on its way to 130', (fullScaleKpa) => {
    for (const logger of loggers)
      expect(codesOf({ boost: settling(0.6), fullScaleKpa, ...logger }), JSON.stringify(logger)).toContain(
        'sensor-full-scale',
      );
  });

  it('flags a noisy trace whose noise is gone at its top', () => {
    const shown = { boost: settling(0.6), noiseKpa: 0.4, fullScaleKpa: 110, rateHz: 50, stepKpa: 0.1 };
    expect(codesOf(shown)).toContain('sensor-full-scale');
  });
});

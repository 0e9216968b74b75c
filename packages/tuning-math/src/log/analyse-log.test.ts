import { describe, expect, it } from 'vitest';
import { analyseLog } from './analyse-log.js';
import { analyseSamples } from './analyse-samples.js';
import { LogError } from './log-error.js';
import { readLog } from './read-log.js';
import { createLogReader } from './reading/create-log-reader.js';
import { traceOfLog } from './traces/trace-of-log.js';
import { traceOfPull } from './traces/trace-of-pull.js';

const HEADER =
  'Time (s),Boost (kPa),Engine speed (rpm),Vehicle speed (km/h),Throttle (%),Knock retard (deg),Lambda';

interface Shape {
  readonly rateHz?: number;
  readonly knockDeg?: number;
  readonly lambda?: number;
  readonly slip?: (sinceS: number) => number;
  readonly boost?: (sinceS: number) => number;
}

/** Two seconds of cruise, eight of full load in third gear, one of coasting. */
function logOf({
  rateHz = 50,
  knockDeg = 0,
  lambda = 0.82,
  slip = () => 1,
  boost = rise,
}: Shape = {}): string {
  const rows = Array.from({ length: 11 * rateHz }, (_, row) => {
    const timeS = row / rateHz;
    const sinceS = timeS - 2;
    const isPull = sinceS >= 0 && sinceS <= 8;
    const kmh = (isPull ? 2100 + 500 * sinceS : 2100) / 48;
    const rpm = kmh * 48 * (isPull ? slip(sinceS) : 1);
    const cells = [
      timeS.toFixed(3),
      (isPull ? boost(sinceS) : -40).toFixed(2),
      rpm.toFixed(0),
      kmh.toFixed(2),
    ];
    return [...cells, isPull ? 100 : 10, isPull && sinceS > 4 ? knockDeg : 0, lambda].join(',');
  });
  return [HEADER, ...rows].join('\n');
}

function rise(sinceS: number): number {
  return 125 * (1 - Math.exp(-sinceS / 0.6)) - 40 * Math.exp(-sinceS / 0.2);
}

const codesOf = (csv: string, options = {}): string[] => {
  return analyseLog(csv, options).pulls[0]?.reasons.map(({ code }) => code) ?? [];
};

describe('analyseLog', () => {
  it('finds one pull, measures it, and says with which code and settings', () => {
    const analysis = analyseLog(logOf(), { targetKpa: 120 });
    expect(analysis.pulls).toHaveLength(1);
    expect(analysis.pulls[0]).toMatchObject({
      gear: 3,
      gearBasis: 'usual-gearing',
      usable: true,
      onsetBasis: 'target',
      knockSeen: false,
    });
    expect(Math.abs((analysis.pulls[0]?.startS ?? 0) - 2)).toBeLessThan(0.05);
    expect(Math.abs((analysis.pulls[0]?.endS ?? 0) - 10)).toBeLessThan(0.05);
    expect(analysis.sampleRateHz).toBeCloseTo(50, 6);
    expect(analysis.provenance).toMatchObject({
      codeVersion: expect.any(String),
      settings: { smoothWindowS: 0.25 },
    });
  });

  it('gives the same result to the last digit from text, bytes and its own recorded settings', () => {
    const csv = logOf();
    const analysis = analyseLog(csv);
    expect(analyseLog(new TextEncoder().encode(csv))).toEqual(analysis);
    expect(analyseLog(csv, { settings: analysis.provenance.settings })).toEqual(analysis);
    expect(JSON.parse(JSON.stringify(analysis))).toEqual(analysis);
  });

  it('tells gear from the ratios of the car, and calls second gear wrong', () => {
    const gearing = {
      gearRatios: [3.4, 2.0, 1.35, 1.0],
      finalDriveRatio: 4.1,
      tyreRollingCircumferenceM: 1.93,
    };
    expect(analyseLog(logOf(), gearing).pulls[0]).toMatchObject({ gear: 3, gearBasis: 'ratios' });
    const short = { ...gearing, gearRatios: [2.0, 1.35, 1.0] };
    expect(codesOf(logOf(), short)).toContain('wrong-gear');
  });

  it('flags slip, knock, a lean mixture and a given sensor full scale', () => {
    expect(codesOf(logOf({ slip: (sinceS) => (sinceS > 1 && sinceS < 2 ? 1.2 : 1) }))).toContain('slipped');
    expect(codesOf(logOf({ knockDeg: 3 }))).toContain('knock');
    expect(codesOf(logOf({ lambda: 1.05 }))).toContain('lean');
    expect(codesOf(logOf(), { sensorFullScaleKpa: 120 })).toContain('sensor-full-scale');
  });

  it('leaves figures null that a pull cannot tell, each with its reason', () => {
    const climbing = analyseLog(logOf({ boost: (sinceS) => 15 * sinceS }), { targetKpa: 200 }).pulls[0];
    expect(climbing).toMatchObject({ onsetRpm: null, onsetBasis: null });
    expect(climbing?.reasons.map(({ code }) => code)).toContain('no-onset');
  });

  it('honours changed settings and refuses senseless ones by name', () => {
    expect(codesOf(logOf(), { settings: { leastSpanRpm: 6000 } })).toContain('short');
    expect(() => analyseLog(logOf(), { settings: { smoothWindowS: NaN } })).toThrow('smoothWindowS');
    expect(() => analyseLog(logOf(), { targetKpa: -5 })).toThrow('target of -5 kPa');
    expect(() =>
      analyseLog(logOf().replaceAll('Boost (kPa)', 'MAP (kPa abs)'), { barometricAbsKpa: 5 }),
    ).toThrow(LogError);
  });

  it('gives an uncertainty that shrinks as sampling gets faster', () => {
    const noisy = (rateHz: number): string =>
      logOf({ rateHz, boost: (sinceS) => rise(sinceS) + Math.sin(1000 * sinceS * sinceS) });
    const at = (rateHz: number): number => analyseLog(noisy(rateHz)).pulls[0]?.uncertainty.peakKpa ?? NaN;
    expect(at(200)).toBeLessThan(at(20));
  });
});

describe('createLogReader', () => {
  it('refuses an empty file, and pushes after its end, with a code', () => {
    const reader = createLogReader();
    expect(() => reader.finish()).toThrow(expect.objectContaining({ code: 'empty-file' }));
    expect(() => reader.push('1,2')).toThrow(expect.objectContaining({ code: 'reader-finished' }));
  });

  it('does not keep hold of a buffer that the caller uses again', () => {
    const csv = new TextEncoder().encode(logOf());
    const reader = createLogReader();
    const buffer = Buffer.alloc(1000);
    for (let start = 0; start < csv.length; start += 1000) {
      const count = buffer.fill(0).write(new TextDecoder().decode(csv.subarray(start, start + 1000)));
      reader.push(buffer.subarray(0, count));
    }
    expect(analyseSamples(reader.finish())).toEqual(analyseLog(csv));
  });
});

describe('traceOfPull', () => {
  const samples = readLog(logOf({ rateHz: 200 }));
  const [pull] = analyseSamples(samples).pulls;
  const span = { startS: pull?.startS ?? 0, endS: pull?.endS ?? 0 };

  it('keeps the highest and lowest boost however far it is thinned', () => {
    const full = traceOfPull(samples, span, { points: 1e6 });
    const thin = traceOfPull(samples, span, { points: 40 });
    const range = (values: readonly (number | null)[]): number[] => {
      const numbers = values.filter((value) => value !== null);
      return [Math.min(...numbers), Math.max(...numbers)];
    };
    expect(thin.timeS.length).toBeLessThanOrEqual(42);
    expect(range(thin.boostKpa)).toEqual(range(full.boostKpa));
  });

  it('gives lists of one length and empty lists for channels that the log does not have', () => {
    const trace = traceOfPull(samples, span);
    expect(trace.boostKpa).toHaveLength(trace.timeS.length);
    expect(trace.filteredKpa).toHaveLength(trace.timeS.length);
    expect(trace.engineSpeedRpm).toHaveLength(trace.timeS.length);
    expect(trace.dutyPct).toEqual([]);
  });

  it('refuses a stretch that ends before it starts', () => {
    expect(() => traceOfLog(samples, { fromS: 3, toS: 2 })).toThrow(LogError);
  });
});

import { TooFewPointsError } from '@pullbook/tuning-math';
import { describe, expect, it } from 'vitest';
import { FAULT_KINDS, faultOf, type FaultKind } from '../faults/index.js';
import { drawCar } from '../physical/draw-car.js';
import { seededRandom } from '../random/index.js';
import { drawLogger, perfectLogger } from './draw-logger.js';
import type { LogChannel } from './log-channel.js';
import { LOG_STYLES, type LogStyle } from './log-style.js';
import { channelsOfStyle, recordLog } from './record-log.js';

const car = drawCar(seededRandom(1));
const styleOf = (name: string): LogStyle => {
  const style = LOG_STYLES.find((candidate) => candidate.name === name);
  if (style === undefined) throw new Error(`no style ${name}`);
  return style;
};
const SHORT = { startRpm: 2500, endRpm: 4600 } as const;

/** The file's numbers by column name, read by the plain rules of its style. */
function readBack(csv: string, style: LogStyle): { header: string[]; rows: string[][] } {
  const lines = csv
    .replace('\uFEFF', '')
    .split(style.lineEnd)
    .filter((line) => line !== '');
  const body = lines.slice(style.preamble.filter((line) => line !== '').length);
  const cells = body.map((line) => line.split(style.delimiter).map((cell) => cell.replaceAll('"', '')));
  return { header: cells[0] ?? [], rows: cells.slice(style.unitPlace === 'row' ? 2 : 1) };
}

describe('recordLog', () => {
  it.each(LOG_STYLES.map((style) => style.name))(
    'writes the truth in the style %s, unit for unit',
    (name) => {
      const style = styleOf(name);
      const logger = perfectLogger(20, channelsOfStyle(style));
      const log = recordLog(
        car,
        [{ dutyPct: 20, ...SHORT }],
        { logger, style, cruiseS: [1, 1] },
        seededRandom(4),
      );
      const { header, rows } = readBack(log.csv, style);
      const shift = style.time.form === 'absent' ? 0 : 1;
      expect(header).toHaveLength(style.columns.length + shift);
      expect(rows).toHaveLength(log.rowTimesS.length);
      const row = Math.floor((((log.truth[0]?.startS ?? 0) + (log.truth[0]?.endS ?? 0)) / 2) * 20);
      const nearest = log.trace.timeS.findIndex((timeS) => timeS >= (log.rowTimesS[row] ?? 0));
      const exact = (column: 'boostKpa' | 'engineRpm' | 'wheelMps' | 'chargeC') =>
        log.trace[column][nearest] ?? 0;
      const truth: Partial<Record<LogChannel, number>> = {
        boost: exact('boostKpa'),
        manifoldAbsolute: exact('boostKpa') + 101.325,
        engineSpeed: exact('engineRpm'),
        vehicleSpeed: exact('wheelMps') * 3.6,
        throttle: 100,
        intakeTemperature: exact('chargeC'),
        lambda: 0.82,
      };
      style.columns.forEach(({ channel, unit }, index) => {
        const expected = truth[channel];
        if (expected === undefined) return;
        const cell = Number((rows[row]?.[index + shift] ?? '').replace(',', '.'));
        const back = (cell - unit.offset) / unit.scale;
        const step = 0.5 / 10 ** unit.decimals / Math.abs(unit.scale);
        expect(Math.abs(back - expected), `${channel} of ${name}`).toBeLessThan(
          step + 0.01 * Math.abs(expected) + 0.2,
        );
      });
    },
  );

  it('gives the same bytes for the same seed and others for the next', () => {
    const style = styleOf('bench');
    const write = (seed: number) => {
      const random = seededRandom(seed);
      const logger = drawLogger(25, channelsOfStyle(style), random);
      return recordLog(car, [{ dutyPct: 20, ...SHORT }], { logger, style, cruiseS: [1, 2] }, random).csv;
    };
    expect(write(8)).toBe(write(8));
    expect(write(8)).not.toBe(write(9));
  });

  it('drives one pull after the other in the asked gears, with idle, vacuum and a warmer cooler in between', () => {
    const style = styleOf('paddock');
    const logger = perfectLogger(20, channelsOfStyle(style));
    const pulls = [
      { dutyPct: 20, gear: 3, ...SHORT },
      { dutyPct: 30, gear: 4, ...SHORT },
      { dutyPct: 30, gear: 3, ...SHORT },
    ];
    const log = recordLog(car, pulls, { logger, style, idleS: 2, cruiseS: [1, 2] }, seededRandom(2));
    expect(log.truth.map((pull) => pull.gear)).toEqual([3, 4, 3]);
    expect(log.truth.map((pull) => pull.dutyPct)).toEqual([20, 30, 30]);
    log.truth
      .slice(1)
      .forEach((pull, i) => expect(pull.startS).toBeGreaterThan((log.truth[i]?.endS ?? 0) + 2));
    expect(Math.min(...log.trace.boostKpa)).toBeLessThan(-60);
    // A healthy idle near sea level holds about 17 to 22 inHg, 57 to 75 kPa, of vacuum: common practice, no source.
    const idle = log.trace.boostKpa[log.trace.timeS.findIndex((timeS) => timeS > 1.5)] ?? 0;
    expect(idle).toBeLessThan(-50);
    expect(idle).toBeGreaterThan(-80);
    const coolerAt = (timeS: number) =>
      log.trace.coolerC[log.trace.timeS.findIndex((time) => time >= timeS)] ?? 0;
    expect(coolerAt(log.truth[1]?.endS ?? 0)).toBeGreaterThan(coolerAt(log.truth[0]?.startS ?? 0) + 1);
  });

  it('leaves out rows where the logger drops them and keeps its times rising', () => {
    const style = styleOf('yard');
    const logger = { ...perfectLogger(100, channelsOfStyle(style)), jitterRatio: 0.1, droppedRatio: 0.05 };
    const log = recordLog(
      car,
      [{ dutyPct: 10, ...SHORT }],
      { logger, style, cruiseS: [1, 1] },
      seededRandom(3),
    );
    const whole = Math.floor((log.trace.timeS.at(-1) ?? 0) * 100) + 1;
    expect(1 - log.rowTimesS.length / whole).toBeGreaterThan(0.03);
    expect(1 - log.rowTimesS.length / whole).toBeLessThan(0.07);
    log.rowTimesS.slice(1).forEach((timeS, row) => expect(timeS).toBeGreaterThan(log.rowTimesS[row] ?? 0));
  });

  it('refuses a drive without pulls', () => {
    const style = styleOf('shed');
    const options = { logger: perfectLogger(10, channelsOfStyle(style)), style };
    expect(() => recordLog(car, [], options, seededRandom(1))).toThrow(TooFewPointsError);
  });
});

/** What a full-load stretch of the file 'bench' shows. */
function shown(kind: FaultKind | null, which = car) {
  const style = styleOf('bench');
  const logger = perfectLogger(50, channelsOfStyle(style));
  const pull = { dutyPct: 40, ...SHORT, endRpm: 5200, faults: kind === null ? [] : [faultOf(kind)] };
  const log = recordLog(which, [pull], { logger, style, cruiseS: [1, 1] }, seededRandom(21));
  const { rows } = readBack(log.csv, style);
  const truth = log.truth[0];
  const inside = rows.filter(
    (row) => Number(row[0]) >= (truth?.startS ?? 0) && Number(row[0]) <= (truth?.endS ?? 0),
  );
  const column = (index: number) => inside.map((row) => Number(row[index]));
  const [boost, wheel, undriven, throttle] = [1, 3, 4, 5].map(column) as [
    number[],
    number[],
    number[],
    number[],
  ];
  const peak = Math.max(...boost);
  return {
    peak,
    atPeak: boost.filter((value) => value === peak).length,
    slip: Math.max(...wheel.map((value, row) => value / (undriven[row] ?? 1) - 1)),
    leastThrottle: Math.min(...throttle),
    mostLambda: Math.max(...column(8)),
    mostRetard: Math.max(...column(9)),
    faults: truth?.faults,
    fullScaleKpa: log.fullScaleKpa,
  };
}

describe('a fault', () => {
  const sound = shown(null);
  const soaring: FaultKind[] = ['actuator-line-off', 'solenoid-line-off', 'sticking-gate', 'boost-creep'];
  const falling: FaultKind[] = ['leak', 'weak-spring', 'lazy-solenoid', 'dead-solenoid'];
  const peaks: Record<string, (peak: number) => boolean> = {
    ...Object.fromEntries(soaring.map((kind) => [kind, (peak: number) => peak > sound.peak * 1.05])),
    ...Object.fromEntries(falling.map((kind) => [kind, (peak: number) => peak < sound.peak * 0.95])),
  };

  it('is not seen in the log of a sound car', () => {
    expect(sound.slip).toBeLessThan(0.02);
    expect(sound.leastThrottle).toBeGreaterThan(88);
    expect(sound.mostLambda).toBeLessThan(0.9);
    expect(sound.mostRetard).toBe(0);
    expect(sound.atPeak).toBeLessThan(6);
  });

  it.each([...soaring, ...falling])('%s shows in the log as a peak at least a twentieth off', (kind) => {
    const seen = shown(kind);
    expect(peaks[kind]?.(seen.peak)).toBe(true);
    expect(seen.faults).toEqual([kind]);
  });

  it('wheel-slip shows as driven wheels faster than the road', () => {
    expect(shown('wheel-slip').slip).toBeGreaterThan(0.08);
  });

  it('throttle-lift shows as a dip of the throttle', () => {
    expect(shown('throttle-lift').leastThrottle).toBeLessThan(30);
  });

  it('sensor-full-scale shows as a flat top below the sound peak', () => {
    const seen = shown('sensor-full-scale');
    expect(seen.atPeak).toBeGreaterThan(10);
    expect(seen.peak).toBeLessThan(sound.peak * 0.9);
    expect(Math.abs(seen.peak - (seen.fullScaleKpa ?? 0))).toBeLessThan(0.051);
    expect(sound.fullScaleKpa).toBeNull();
  });

  it('knock shows as ignition taken back, lean as a mixture that leans out at full load', () => {
    expect(shown('knock').mostRetard).toBeGreaterThan(1);
    expect(shown('lean').mostLambda).toBeGreaterThan(0.95);
  });

  it('on the solenoid line of a two-chamber actuator takes the response away instead', () => {
    const twoChamber = drawCar(seededRandom(7));
    expect(twoChamber.solenoid.plumbing).toBe('two-chamber');
    expect(shown('solenoid-line-off', twoChamber).peak).toBeLessThan(shown(null, twoChamber).peak * 0.95);
  });

  it('has a test for every kind', () => {
    const tested = [
      ...soaring,
      ...falling,
      'wheel-slip',
      'throttle-lift',
      'sensor-full-scale',
      'knock',
      'lean',
    ];
    expect([...tested].sort()).toEqual([...FAULT_KINDS].sort());
  });
});

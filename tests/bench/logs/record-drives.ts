import {
  channelsOfStyle,
  drawBetween,
  drawCar,
  drawLogger,
  drawOne,
  faultOf,
  LOG_STYLES,
  recordLog,
  seededRandom,
  type FaultKind,
  type LoggedPullTruth,
  type LogStyle,
  type PhysicalCar,
  type PullOptions,
  type PullTruth,
  type Random,
  type Trace,
} from '@pullbook/practice-car';
import type { LogOptions } from '@pullbook/tuning-math';
import { filteredTruth } from './filtered-truth.js';

/** A recorded drive of a practice car: the file, what is known beside it, and the truth. */
export interface RecordedDrive {
  readonly seed: number;
  readonly rateHz: number;
  readonly style: LogStyle;
  readonly csv: string;
  readonly options: LogOptions;
  readonly truth: readonly TruePull[];
}

/** One pull that was driven, with what the log ought to show of it. */
export interface TruePull extends LoggedPullTruth {
  /** The same pull through the documented filter, without noise: the figures by their definition. */
  readonly filtered: PullTruth;
  /** Faults that the channels of this log can show. */
  readonly visibleFaults: readonly string[];
  readonly durationS: number;
}

export const RATES_HZ = [10, 20, 25, 50, 100, 200] as const;
const PULLS_PER_DRIVE = 3;
const FAULT_SHARE = 0.4;
const DRIVE_FAULTS = [
  'throttle-lift',
  'wheel-slip',
  'sensor-full-scale',
  'knock',
  'lean',
  'gear',
  'short',
] as const;
type DriveFault = (typeof DRIVE_FAULTS)[number];

/**
 * A drive with several pulls at one of the rates of the table, in one of the practice loggers' file
 * styles, some pulls with a fault. The same seed gives the same drive.
 */
export function recordDrive(seed: number): RecordedDrive {
  const random = seededRandom(seed);
  const car = drawCar(random);
  const rateHz = RATES_HZ[seed % RATES_HZ.length] ?? 50;
  const style = LOG_STYLES[Math.floor(seed / RATES_HZ.length) % LOG_STYLES.length] as LogStyle;
  const ambient = { pressureAbsKpa: drawBetween(random, 90, 103), temperatureC: drawBetween(random, 0, 32) };
  const base = {
    ambient,
    dutyPct: drawBetween(random, 15, 70),
    gear: drawOne(random, [3, 4]),
    targetKpa: 110,
  };
  const wanted = Array.from({ length: PULLS_PER_DRIVE }, () => {
    return random() < FAULT_SHARE ? drawOne(random, DRIVE_FAULTS) : null;
  });
  const pulls = wanted.map((fault) =>
    pullWith({ ...base, startRpm: drawBetween(random, 1900, 2500) }, fault, random),
  );
  const logger = drawLogger(rateHz, channelsOfStyle(style), random);
  const recorded = recordLog(car, pulls, { logger, style, idleS: 4 }, random);
  const clipKpa = clipLevelKpa(pulls, style, recorded.trace.boostKpa, ambient.pressureAbsKpa);
  return {
    seed,
    rateHz,
    style,
    csv: recorded.csv,
    options: optionsFor(car, base.targetKpa, ambient.pressureAbsKpa, rateHz),
    truth: recorded.truth.map((truth, index) => ({
      ...truth,
      filtered: filteredTruth(recorded.trace, truth, base.targetKpa),
      durationS: truth.endS - truth.startS,
      visibleFaults: visibleFaults(truth, wanted[index] ?? null, {
        style,
        clipKpa,
        wasLifted: wasLifted(recorded.trace, truth),
      }),
    })),
  };
}

/** The practice logger's pressure sensors end here even without a fault. */
const GAUGE_END_KPA = 260;
const ABSOLUTE_END_KPA = 400;

function wasLifted({ timeS, throttleRatio }: Trace, { startS, endS }: LoggedPullTruth): boolean {
  return throttleRatio.some((ratio, row) => {
    const time = timeS[row] ?? 0;
    return time > startS && time < endS && ratio < 0.9;
  });
}

/** Where the practice logger's pressure sensor ends, gauge. */
function clipLevelKpa(
  pulls: readonly PullOptions[],
  style: LogStyle,
  boostKpa: Float64Array,
  airKpa: number,
): number {
  const fault = pulls.flatMap((pull) => pull.faults ?? []).find(({ kind }) => kind === 'sensor-full-scale');
  const isAbsolute = style.columns.some((column) => column.channel === 'manifoldAbsolute');
  const shift = isAbsolute ? airKpa : 0;
  if (fault === undefined) return isAbsolute ? ABSOLUTE_END_KPA - airKpa : GAUGE_END_KPA;
  const most = boostKpa.reduce((highest, value) => Math.max(highest, value + shift), -Infinity);
  return most * (1 - 0.3 * fault.severityRatio) - shift;
}

function pullWith(base: PullOptions, fault: DriveFault | null, random: Random): PullOptions {
  if (fault === null) return base;
  if (fault === 'gear') return { ...base, gear: 2 };
  if (fault === 'short') return { ...base, endRpm: (base.startRpm ?? 2200) + drawBetween(random, 700, 1200) };
  return { ...base, faults: [faultOf(fault satisfies FaultKind, drawBetween(random, 0.4, 1))] };
}

function optionsFor(
  car: PhysicalCar,
  targetKpa: number,
  barometricAbsKpa: number,
  sampleRateHz: number,
): LogOptions {
  const { gearRatios, finalDriveRatio, wheelRadiusM } = car.vehicle;
  return {
    targetKpa,
    barometricAbsKpa,
    sampleRateHz,
    gearRatios,
    finalDriveRatio,
    tyreRollingCircumferenceM: 2 * Math.PI * wheelRadiusM,
  };
}

interface DriveFacts {
  readonly style: LogStyle;
  readonly clipKpa: number;
  /** A pull that ends before the speed of the lift has none. */
  readonly wasLifted: boolean;
}

const SEEN_SLIP_PCT = 6;

/** What each fault is called in the verdict. */
const CALLED: Readonly<Record<DriveFault, string | null>> = {
  'throttle-lift': 'lifted',
  gear: 'wrong-gear',
  short: 'short',
  lean: 'lean',
  knock: 'knock',
  'wheel-slip': null,
  'sensor-full-scale': null,
};
const NEEDS_CHANNEL: Readonly<Record<string, string>> = { lean: 'lambda', knock: 'knockRetard' };

/** What the file can show: a channel that is not logged shows no fault; slip and clipping by the truth. */
function visibleFaults(truth: LoggedPullTruth, wanted: DriveFault | null, facts: DriveFacts): string[] {
  const called = wanted === null ? null : CALLED[wanted];
  const needed = NEEDS_CHANNEL[called ?? ''];
  const isDone = called !== 'lifted' || facts.wasLifted;
  const isShown = needed === undefined || facts.style.columns.some((column) => column.channel === needed);
  return [
    ...(called !== null && isShown && isDone ? [called] : []),
    ...(truth.slipPct >= SEEN_SLIP_PCT ? ['slipped'] : []),
    ...(truth.peakKpa > facts.clipKpa ? ['sensor-full-scale'] : []),
  ];
}

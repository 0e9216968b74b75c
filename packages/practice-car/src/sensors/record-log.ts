import { TooFewPointsError } from '@pullbook/tuning-math';
import type { Fault, FaultKind } from '../faults/fault.js';
import { checkPullOptions } from '../physical/check-pull-options.js';
import type { DriveLeg } from '../physical/drive-plan.js';
import { measurePull, type PullTruth } from '../physical/measure-pull.js';
import type { PhysicalCar } from '../physical/physical-car.js';
import { PULL_DEFAULTS, type PullOptions, type PullPlan } from '../physical/pull-plan.js';
import { conditionsOf, pullPhase } from '../physical/run-pull.js';
import { simulateDrive } from '../physical/simulate-drive.js';
import { cutTrace, type Trace } from '../physical/trace.js';
import { drawBetween } from '../random/draw-between.js';
import { drawNormal } from '../random/draw-normal.js';
import type { Random } from '../random/seeded-random.js';
import { channelSeries, type FaultsAt, type LogChannel } from './log-channel.js';
import type { LogStyle } from './log-style.js';
import { sampleSensor } from './sample-sensor.js';
import type { Logger, Sensor } from './sensor.js';
import { type LogColumn, writeLog } from './write-log.js';

/** How a drive is recorded. Air, heat soak, supply and cut are those of the first pull. */
export interface LogOptions {
  readonly logger: Logger;
  readonly style: LogStyle;
  /** Standing at idle before the first pull. */
  readonly idleS?: number;
  /** Shortest and longest cruise between two pulls. */
  readonly cruiseS?: readonly [number, number];
}

/** The truth about one pull of a log, times as the log writes them. */
export interface LoggedPullTruth extends PullTruth {
  readonly dutyPct: number;
  readonly gateHoldPct: number;
  readonly targetKpa: number;
  readonly faults: readonly FaultKind[];
  /** Largest wheel slip in the pull, % of road speed. */
  readonly slipPct: number;
  readonly gradientPct: number;
}

export interface RecordedLog {
  readonly csv: string;
  readonly truth: readonly LoggedPullTruth[];
  readonly trace: Trace;
  readonly rowTimesS: Float64Array;
  /** Where the pressure sensor's range ends, gauge, if a pull has the fault sensor-full-scale (it holds for the whole log). */
  readonly fullScaleKpa: number | null;
}

function legOf(car: PhysicalCar, plan: PullPlan, cruiseS: number): DriveLeg {
  const place = { gear: plan.gear, engineRpm: plan.startRpm };
  return {
    phases: [
      { kind: 'reach', ...place },
      { kind: 'cruise', ...place, durationS: cruiseS },
      pullPhase(car, plan),
    ],
    settings: plan,
    gradientPct: plan.gradientPct,
    faults: plan.faults,
  };
}

function legsOf(
  car: PhysicalCar,
  plans: readonly PullPlan[],
  options: LogOptions,
  random: Random,
): DriveLeg[] {
  const [shortest, longest] = options.cruiseS ?? [2, 5];
  const legs = plans.map((plan) => legOf(car, plan, drawBetween(random, shortest, longest)));
  const [first] = legs;
  const last = legs.at(-1);
  const lastPlan = plans.at(-1);
  if (first === undefined || last === undefined || lastPlan === undefined) return [];
  const before: DriveLeg = { ...first, phases: [{ kind: 'idle', durationS: options.idleS ?? 0 }] };
  const place = { gear: lastPlan.gear, engineRpm: lastPlan.startRpm };
  const after: DriveLeg = {
    ...last,
    phases: [
      { kind: 'reach', ...place },
      { kind: 'cruise', ...place, durationS: 1 },
    ],
  };
  return [before, ...legs, after];
}

/** Moments at which the logger writes a row: even but for jitter, some missing. Without a time column, exactly even. */
function rowTimes(endS: number, options: LogOptions, random: Random): Float64Array {
  const { style } = options;
  const isEven = style.time.form === 'absent';
  const logger = isEven ? { ...options.logger, jitterRatio: 0, droppedRatio: 0 } : options.logger;
  const intervalS = 1 / logger.rateHz;
  const times: number[] = [];
  for (let row = 0; row * intervalS <= endS; row++) {
    const away = Math.min(0.45, Math.max(-0.45, logger.jitterRatio * drawNormal(random)));
    const isDropped = logger.droppedRatio > 0 && random() < logger.droppedRatio;
    if (!isDropped || row === 0) times.push(row === 0 ? 0 : (row + away) * intervalS);
  }
  return Float64Array.from(times);
}

/** How much of the greatest reading a sensor with the fault at its worst cannot show. */
const FULL_SCALE_SHORT_RATIO = 0.3;

const fullScaleFault = (faults: readonly Fault[]): Fault | undefined =>
  faults.find((candidate) => candidate.kind === 'sensor-full-scale');

const shortOf = (greatest: number, fault: Fault): number =>
  greatest * (1 - FULL_SCALE_SHORT_RATIO * fault.severityRatio);

const greatestOf = (series: Float64Array): number =>
  series.reduce((best, value) => Math.max(best, value), -Infinity);

/** Where the pressure sensor's range ends, gauge; `airKpa` is the air's pressure for a sensor that reads absolute. */
function fullScaleKpa(trace: Trace, faults: readonly Fault[], airKpa: number): number | null {
  const fault = fullScaleFault(faults);
  return fault === undefined ? null : shortOf(greatestOf(trace.boostKpa) + airKpa, fault) - airKpa;
}

/** A sensor whose range ends short of what it should see, where that is the fault. */
function faultySensor(sensor: Sensor, series: Float64Array, faults: readonly Fault[]): Sensor {
  const fault = fullScaleFault(faults);
  const isPressure = sensor.channel === 'boost' || sensor.channel === 'manifoldAbsolute';
  if (fault === undefined || !isPressure) return sensor;
  return { ...sensor, highest: Math.min(sensor.highest, shortOf(greatestOf(series), fault)) };
}

function truthOf(trace: Trace, plan: PullPlan, phase: number): LoggedPullTruth | null {
  const first = trace.phase.indexOf(phase);
  const after = trace.phase.findIndex((value) => value > phase);
  if (first < 0) return null;
  const rows = cutTrace(trace, first, after < 0 ? trace.timeS.length : after + 1);
  const truth = measurePull(rows, plan.targetKpa);
  if (truth === null) return null;
  const slips = rows.wheelMps.map((wheel, row) => 100 * (wheel / Math.max(1, rows.speedMps[row] ?? 1) - 1));
  return {
    ...truth,
    dutyPct: plan.dutyPct,
    gateHoldPct: plan.gateHoldPct,
    targetKpa: plan.targetKpa,
    faults: plan.faults.map((fault) => fault.kind),
    slipPct: slips.reduce((most, value) => Math.max(most, value), 0),
    gradientPct: plan.gradientPct,
  };
}

/** Faults in force at a moment: those of the pull that is being driven or led up to. */
function faultsOver(trace: Trace, plans: readonly PullPlan[]): FaultsAt {
  const ends = plans.map((_, index) => {
    const row = trace.phase.findIndex((phase) => phase > phaseOfPull(index));
    return row < 0 ? Infinity : (trace.timeS[row] ?? Infinity);
  });
  return (timeS) => plans[ends.findIndex((end) => timeS < end)]?.faults ?? [];
}

/** Legs have three phases each, after one of idling; the pull is the third. */
const phaseOfPull = (index: number): number => 1 + 3 * index + 2;

/**
 * A drive with several pulls and cruising between them, as a logger writes it, and the truth beside it.
 *
 * The car is driven in one go, so the charge cooler heats up from pull to pull and shows boost, vacuum, gear changes and
 * overrun as a road log does. The file's samples pass each channel's sensor.
 *
 * @param car the car
 * @param pulls at least one; each with its own settings, gear, gradient and faults
 * @param options logger, style of the file, cruising
 * @param random stream to draw from
 * @returns the file's text, the truth for each pull (times as in the file), and the noise-free trace
 * @throws TooFewPointsError for no pulls; OutOfRangeError, NotFiniteError as `runPull`
 */
export function recordLog(
  car: PhysicalCar,
  pulls: readonly PullOptions[],
  options: LogOptions,
  random: Random,
): RecordedLog {
  const plans: PullPlan[] = pulls.map((pull) => ({ ...PULL_DEFAULTS, ...pull }));
  const [first] = plans;
  if (first === undefined)
    throw new TooFewPointsError('recordLog', { argument: 'pulls', value: 0, allowed: 'at least one' });
  for (const plan of plans) checkPullOptions(car, plan);
  const idles = (options.idleS ?? 0) > 0;
  const start = { startGear: idles ? 0 : first.gear, startRpm: first.startRpm };
  const trace = simulateDrive(car, legsOf(car, plans, options, random), { ...conditionsOf(first), ...start });
  const rowTimesS = rowTimes(trace.timeS.at(-1) ?? 0, options, random);
  const faults = plans.flatMap((plan) => plan.faults);
  const context = { ambient: first.ambient, faultsAt: faultsOver(trace, plans), random };
  const columns = options.style.columns.flatMap((style): LogColumn[] => {
    const sensor = options.logger.sensors.find((candidate) => candidate.channel === style.channel);
    if (sensor === undefined) return [];
    const series = channelSeries(style.channel, trace, context);
    const truth = { timeS: trace.timeS, series };
    return [{ style, values: sampleSensor(truth, faultySensor(sensor, series, faults), rowTimesS, random) }];
  });
  const isAbsolute = options.style.columns.some((column) => column.channel === 'manifoldAbsolute');
  return {
    fullScaleKpa: fullScaleKpa(trace, faults, isAbsolute ? first.ambient.pressureAbsKpa : 0),
    csv: writeLog(options.style, rowTimesS, columns),
    truth: plans.flatMap((plan, index) => truthOf(trace, plan, phaseOfPull(index)) ?? []),
    trace,
    rowTimesS,
  };
}

/** Every channel that a style writes. */
export function channelsOfStyle(style: LogStyle): readonly LogChannel[] {
  return style.columns.map((column) => column.channel);
}

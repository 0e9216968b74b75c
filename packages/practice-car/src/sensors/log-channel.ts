import type { Fault } from '../faults/fault.js';
import { drawBetween } from '../random/draw-between.js';
import type { Random } from '../random/seeded-random.js';
import type { Ambient } from '../physical/physical-car.js';
import type { Trace } from '../physical/trace.js';

/** What a practice logger can record, and the unit that the figures have before the log's style changes them. */
export const LOG_CHANNELS = {
  boost: 'kPa gauge',
  manifoldAbsolute: 'kPa absolute',
  barometer: 'kPa absolute',
  engineSpeed: 'r/min',
  vehicleSpeed: 'km/h',
  undrivenSpeed: 'km/h',
  throttle: '%',
  intakeTemperature: 'C',
  duty: '%',
  gear: '',
  lambda: 'lambda',
  knockRetard: 'deg',
} as const;

export type LogChannel = keyof typeof LOG_CHANNELS;

const STOICHIOMETRIC_OVERRUN = 2;
const FULL_LOAD_LAMBDA = 0.82;
const LEAN_LAMBDA = 1.12;
/** Air flow, as a share of the pull's greatest, from which a starved engine leans out. */
const LEAN_FROM_RATIO = 0.8;
const KNOCK_FROM_RATIO = 0.85;
const WORST_RETARD_DEG = 9;
const KNOCK_FADES_S = 0.5;

/** For each row, the greatest value within its phase of the drive, so that each pull is measured by itself. */
function greatestInPhase(trace: Trace, values: Float64Array): Float64Array {
  const most = new Map<number, number>();
  values.forEach((value, row) => {
    const phase = trace.phase[row] ?? 0;
    most.set(phase, Math.max(most.get(phase) ?? -Infinity, value));
  });
  return trace.phase.map((phase) => most.get(phase) ?? 0);
}

const severityOf = (faults: readonly Fault[], kind: Fault['kind'], timeS: number): number =>
  faults.reduce(
    (most, fault) =>
      fault.kind === kind && fault.fromS <= timeS ? Math.max(most, fault.severityRatio) : most,
    0,
  );

/** Faults in force at a moment of the drive. */
export type FaultsAt = (timeS: number) => readonly Fault[];

/** Mixture: rich at full load, stoichiometric otherwise, air alone when the fuel is cut; a starved engine leans out. */
function lambdaSeries(trace: Trace, faultsAt: FaultsAt): Float64Array {
  const mostAir = greatestInPhase(trace, trace.airKgPerS);
  return trace.timeS.map((timeS, row) => {
    const throttle = trace.throttleRatio[row] ?? 0;
    if ((trace.fuelRatio[row] ?? 1) < 0.5 || (throttle < 0.02 && (trace.engineRpm[row] ?? 0) > 1600))
      return STOICHIOMETRIC_OVERRUN;
    if (throttle < 0.7) return 1;
    const severity = severityOf(faultsAt(timeS), 'lean', timeS);
    const starved =
      Math.max(0, (trace.airKgPerS[row] ?? 0) / (mostAir[row] ?? 1) - LEAN_FROM_RATIO) /
      (1 - LEAN_FROM_RATIO);
    return FULL_LOAD_LAMBDA + (LEAN_LAMBDA - FULL_LOAD_LAMBDA) * Math.min(1, severity * 3 * starved);
  });
}

/** Ignition taken back after knocks: they come at random above a share of the pull's greatest boost, and fade. */
function knockSeries(trace: Trace, faultsAt: FaultsAt, random: Random): Float64Array {
  const mostBoost = greatestInPhase(trace, trace.boostKpa);
  let retard = 0;
  let before = trace.timeS[0] ?? 0;
  return trace.timeS.map((timeS, row) => {
    const passedS = timeS - before;
    before = timeS;
    retard *= Math.exp(-passedS / KNOCK_FADES_S);
    const severity = severityOf(faultsAt(timeS), 'knock', timeS);
    const isHard =
      (trace.boostKpa[row] ?? 0) > KNOCK_FROM_RATIO * (mostBoost[row] ?? 0) &&
      (trace.throttleRatio[row] ?? 0) > 0.7;
    const perSecond = isHard ? 20 * severity : 0;
    if (random() < perSecond * passedS)
      retard = Math.min(WORST_RETARD_DEG, retard + severity * drawBetween(random, 1, 4));
    return retard;
  });
}

/** What a series of a channel needs beside the trace. */
export interface SeriesContext {
  readonly ambient: Ambient;
  readonly faultsAt: FaultsAt;
  readonly random: Random;
}

/**
 * The true course of one channel over a drive, before its sensor has touched it.
 *
 * @param channel which
 * @param trace noise-free drive
 * @param context air, faults, and randomness for the knocks
 * @returns one value for each row of the trace, in the channel's unit of `LOG_CHANNELS`
 */
export function channelSeries(channel: LogChannel, trace: Trace, context: SeriesContext): Float64Array {
  const { pressureAbsKpa } = context.ambient;
  const series: Record<LogChannel, () => Float64Array> = {
    boost: () => trace.boostKpa,
    manifoldAbsolute: () => trace.boostKpa.map((boost) => boost + pressureAbsKpa),
    barometer: () => trace.timeS.map(() => pressureAbsKpa),
    engineSpeed: () => trace.engineRpm,
    vehicleSpeed: () => trace.wheelMps.map((speed) => speed * 3.6),
    undrivenSpeed: () => trace.speedMps.map((speed) => speed * 3.6),
    throttle: () => trace.throttleRatio.map((ratio) => ratio * 100),
    intakeTemperature: () => trace.chargeC,
    duty: () => trace.dutyPct,
    gear: () => trace.gear,
    lambda: () => lambdaSeries(trace, context.faultsAt),
    knockRetard: () => knockSeries(trace, context.faultsAt, context.random),
  };
  return series[channel]();
}

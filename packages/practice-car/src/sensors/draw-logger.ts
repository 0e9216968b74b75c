import { NotFiniteError, OutOfRangeError } from '@pullbook/tuning-math';
import { drawBetween } from '../random/draw-between.js';
import { drawOne } from '../random/draw-one.js';
import type { Random } from '../random/seeded-random.js';
import type { LogChannel } from './log-channel.js';
import type { Logger, Sensor } from './sensor.js';

const SLOWEST_HZ = 1;
const FASTEST_HZ = 1000;

interface Kind {
  readonly lagS: readonly [number, number];
  readonly noise: readonly [number, number];
  readonly quanta: readonly number[];
  readonly range: readonly [number, number];
  readonly ratesHz: readonly number[];
}

const PLAIN: Kind = { lagS: [0, 0], noise: [0, 0], quanta: [1], range: [0, 100], ratesHz: [1000] };

/** Ranges of what workshop loggers' sensors do: reasoned from common parts (common practice, no source). */
const KINDS: Record<LogChannel, Kind> = {
  boost: {
    lagS: [0.004, 0.025],
    noise: [0.15, 0.8],
    quanta: [0.1, 0.5, 1],
    range: [-100, 260],
    ratesHz: [1000],
  },
  manifoldAbsolute: {
    lagS: [0.004, 0.025],
    noise: [0.15, 0.8],
    quanta: [0.1, 0.5, 1],
    range: [5, 400],
    ratesHz: [1000],
  },
  barometer: {
    lagS: [0.1, 0.1],
    noise: [0.02, 0.05],
    quanta: [0.1, 1],
    range: [50, 115],
    ratesHz: [1000, 1],
  },
  engineSpeed: {
    lagS: [0.01, 0.03],
    noise: [2, 12],
    quanta: [1, 10, 25],
    range: [0, 12_000],
    ratesHz: [1000, 50],
  },
  vehicleSpeed: {
    lagS: [0.03, 0.12],
    noise: [0.05, 0.3],
    quanta: [0.1, 0.5, 1],
    range: [0, 400],
    ratesHz: [1000, 10],
  },
  undrivenSpeed: {
    lagS: [0.05, 0.15],
    noise: [0.05, 0.2],
    quanta: [0.01, 0.1],
    range: [0, 400],
    ratesHz: [25, 10],
  },
  throttle: {
    lagS: [0.005, 0.02],
    noise: [0.1, 0.4],
    quanta: [0.1, 0.4, 1],
    range: [0, 100],
    ratesHz: [1000],
  },
  intakeTemperature: {
    lagS: [2, 7],
    noise: [0.05, 0.2],
    quanta: [0.1, 1],
    range: [-40, 150],
    ratesHz: [1000, 5],
  },
  duty: { ...PLAIN, quanta: [0.5, 1] },
  gear: { ...PLAIN, range: [0, 8] },
  lambda: {
    lagS: [0.06, 0.2],
    noise: [0.003, 0.01],
    quanta: [0.001, 0.01],
    range: [0.65, 2],
    ratesHz: [1000, 20],
  },
  knockRetard: { ...PLAIN, quanta: [0.1, 0.75], range: [0, 15] },
};

function drawSensor(channel: LogChannel, logHz: number, random: Random): Sensor {
  const kind = KINDS[channel];
  return {
    channel,
    lagS: drawBetween(random, ...kind.lagS),
    noise: drawBetween(random, ...kind.noise),
    quantum: drawOne(random, kind.quanta),
    lowest: kind.range[0],
    highest: kind.range[1],
    rateHz: Math.min(logHz, drawOne(random, kind.ratesHz)),
    freezesPerMinute: random() < 0.15 ? drawBetween(random, 0.3, 2) : 0,
  };
}

/**
 * A logger as a customer's car might have it: sensors with their lag, noise, steps and ranges, rows that jitter or
 * go missing.
 *
 * @param rateHz rows each second, 1 to 1000
 * @param channels what it records
 * @param random stream to draw from
 * @throws NotFiniteError, OutOfRangeError for a rate that no logger has
 */
export function drawLogger(rateHz: number, channels: readonly LogChannel[], random: Random): Logger {
  const fault = { argument: 'rateHz', value: rateHz, allowed: `from ${SLOWEST_HZ} to ${FASTEST_HZ}` };
  if (!Number.isFinite(rateHz)) throw new NotFiniteError('drawLogger', fault);
  if (rateHz < SLOWEST_HZ || rateHz > FASTEST_HZ) throw new OutOfRangeError('drawLogger', fault);
  return {
    rateHz,
    jitterRatio: drawBetween(random, 0, 0.08),
    droppedRatio: random() < 0.4 ? drawBetween(random, 0.001, 0.02) : 0,
    sensors: channels.map((channel) => drawSensor(channel, rateHz, random)),
  };
}

/** A logger that writes the truth: no lag, noise, steps, jitter or gaps. For tests and lessons. */
export function perfectLogger(rateHz: number, channels: readonly LogChannel[]): Logger {
  const sensors = channels.map((channel) => ({
    channel,
    lagS: 0,
    noise: 0,
    quantum: 0,
    lowest: -Infinity,
    highest: Infinity,
    rateHz,
    freezesPerMinute: 0,
  }));
  return { rateHz, jitterRatio: 0, droppedRatio: 0, sensors };
}

import { SHOWS_FROM } from '../faults/shows-from.js';
import type { Ambient, PhysicalCar } from '../physical/physical-car.js';
import type { PullOptions } from '../physical/pull-plan.js';
import { runPull, type PullResult } from '../physical/run-pull.js';
import { varyPull } from '../physical/vary-pull.js';
import { drawNormal } from '../random/draw-normal.js';
import { seededRandom } from '../random/seeded-random.js';
import type { PracticeFault } from './draw-practice-fault.js';
import type { PracticeCar, PracticePull, PracticeTrace } from './practice-car.js';

/** The day on which a car is practised with. */
export interface PhysicalRun {
  readonly seed: number;
  readonly ambient: Ambient;
  /** Heat that the charge cooler takes on in a long row of pulls, °C. */
  readonly soakC: number;
  /** Share of pulls that end early. */
  readonly shortShare: number;
  readonly failing: PracticeFault | null;
}

type Drive = Pick<PracticeCar, 'pullAfter' | 'soundMeanKpa'>;

/** Pulls until two thirds of the heat are there. */
const SOAK_PULLS = 4;
/** A pull that ends early does so at this share of the rev limit. */
const SHORT_RATIO = 0.44;
const FALSE_FROM = 0.05;
const GAUGE_RATIO = 0.004;
const ROWS_PER_S = 25;

/**
 * Drives a physical car through a day: each pull heats it, some end early, something may fail. The scatter of the n-th
 * pull is the same whatever its duty.
 */
export function drivePhysical(car: PhysicalCar, run: PhysicalRun): Drive {
  const base = (pullsMade: number): Omit<PullOptions, 'dutyPct'> => ({
    ambient: run.ambient,
    heatSoakC: run.soakC * (1 - Math.exp(-Math.max(pullsMade - 1, 0) / SOAK_PULLS)),
  });
  const known = new Map<string, number>();
  const soundMeanKpa = (dutyPct: number, pullsMade: number): number => {
    const key = `${dutyPct} ${pullsMade}`;
    const peakKpa = known.get(key) ?? runPull(car, { ...base(pullsMade), dutyPct }).peakKpa;
    known.set(key, peakKpa);
    return peakKpa;
  };
  return {
    soundMeanKpa,
    pullAfter: (duties) => {
      const dutyPct = duties.at(-1);
      if (dutyPct === undefined) throw new Error('drivePhysical: no duty to drive');
      const options = { ...base(duties.length), dutyPct };
      return pullOnce(car, {
        run,
        options,
        index: duties.length - 1,
        soundKpa: soundMeanKpa(dutyPct, duties.length),
      });
    },
  };
}

interface Order {
  readonly run: PhysicalRun;
  readonly options: PullOptions;
  readonly index: number;
  readonly soundKpa: number;
}

function pullOnce(car: PhysicalCar, { run, options, index, soundKpa }: Order): PracticePull {
  const random = seededRandom(run.seed * 1009 + index + 1);
  const { failing } = run;
  const faults = failing !== null && index >= failing.fromIndex ? [failing.fault] : [];
  const trueMeanKpa = faults.length === 0 ? soundKpa : runPull(car, { ...options, faults }).peakKpa;
  const isShort = random() < run.shortShare;
  const endRpm = isShort ? SHORT_RATIO * car.engine.revLimitRpm : null;
  const pull = runPull(car, varyPull({ ...options, faults, endRpm }, random));
  return {
    duty: options.dutyPct,
    recordedPeakKpa: Math.round(pull.peakKpa * (1 + GAUGE_RATIO * drawNormal(random))),
    trueMeanKpa,
    isFalse: isShort && pull.peakKpa < (1 - FALSE_FROM) * trueMeanKpa,
    isSeenShort: isShort,
    showsFault: faults.length > 0 && Math.abs(trueMeanKpa / soundKpa - 1) > SHOWS_FROM,
    trace: thinned(pull),
  };
}

/** The pull's boost at about 25 rows a second: enough to look at, little to carry. */
function thinned({ trace }: PullResult): PracticeTrace {
  const timeS: number[] = [];
  const boostKpa: number[] = [];
  trace.timeS.forEach((time, row) => {
    if (time < timeS.length / ROWS_PER_S) return;
    timeS.push(Math.round(time * 1000) / 1000);
    boostKpa.push(Math.round((trace.boostKpa[row] ?? 0) * 10) / 10);
  });
  return { timeS, boostKpa };
}

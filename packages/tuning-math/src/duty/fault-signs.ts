import type { PeakMixture } from './peak-mixture.js';
import { chancePeakAbove, predictPeak } from './predict-peak.js';
import { responsePosterior } from './response-posterior.js';
import { scalePulls, type ScaledPulls } from './scaled-pulls.js';
import { drawParticles, type Particles } from './draw-particles.js';
import type { DutySituation } from './duty-situation.js';

/** Curves drawn for this look. */
const SIGN_PARTICLES = 250;
/** ... out of every so many of the library; prime to the share of curves with a wide floor. */
const SIGN_EVERY = 5;
/** Half the width over which a density is taken, log. */
const DENSITY_STEP = 0.01;

/** How surprising the last pulls are to what the pulls before them say. */
export interface FaultSigns {
  /** Chance of a peak at least as high as the last one. */
  readonly chanceAsHigh: number;
  /** Chance of a peak at most as high as the last one. */
  readonly chanceAsLow: number;
  /** Density of the last reading, per unit of log peak. */
  readonly density: number;
  /** The larger of the last two pulls' chances, both judged by the pulls before the two; 1 where there are too few. */
  readonly bothAsLow: number;
  readonly bothAsHigh: number;
  /** The largest of the last three pulls' chances of a peak at most as high, judged by the pulls before the three. */
  readonly threeAsLow: number;
}

const NO_SIGNS: FaultSigns = {
  chanceAsHigh: 1,
  chanceAsLow: 1,
  density: Infinity,
  bothAsLow: 1,
  bothAsHigh: 1,
  threeAsLow: 1,
};

/** Judges the last pulls by the pulls before them. Costs one more draw of curves and three small posteriors. */
export function faultSigns(situation: DutySituation): FaultSigns {
  const { count } = situation.pulls;
  if (count === 0) return NO_SIGNS;
  const particles = drawParticles(pullsBefore(situation, Math.min(2, count)), {
    library: situation.library,
    count: SIGN_PARTICLES,
    every: SIGN_EVERY,
  });
  const [last = NO_LOOK] = looksAt(situation, particles, 1);
  const single = { chanceAsHigh: last.above, chanceAsLow: 1 - last.above, density: last.density };
  if (count < 3) return { ...NO_SIGNS, ...single };
  const pair = looksAt(situation, particles, 2);
  return {
    ...single,
    bothAsLow: Math.max(...pair.map(({ above }) => 1 - above)),
    bothAsHigh: Math.max(...pair.map(({ above }) => above)),
    threeAsLow: count < 4 ? 1 : Math.max(...looksAt(situation, particles, 3).map(({ above }) => 1 - above)),
  };
}

function pullsBefore({ request }: DutySituation, held: number): ScaledPulls {
  return scalePulls(request.pulls.slice(0, -held), request);
}

interface Look {
  readonly above: number;
  readonly density: number;
}

const NO_LOOK: Look = { above: 1, density: Infinity };

/** For each of the last `held` pulls, the chance of a peak at least as high, by the pulls before them. */
function looksAt(situation: DutySituation, particles: Particles, held: number): Look[] {
  const { pulls } = situation;
  const posterior = responsePosterior(pullsBefore(situation, held), particles);
  return Array.from({ length: held }, (_, index) => {
    const j = pulls.count - held + index;
    const mixture = predictPeak(posterior, pulls.duties[j] as number);
    const reading = pulls.logs[j] as number;
    return { above: chancePeakAbove(mixture, reading), density: peakDensity(mixture, reading) };
  });
}

/** Density of a reading per unit of log peak, from the chance of falling within 1 % of it. */
function peakDensity(mixture: PeakMixture, reading: number): number {
  return (
    (chancePeakAbove(mixture, reading - DENSITY_STEP) - chancePeakAbove(mixture, reading + DENSITY_STEP)) /
    (2 * DENSITY_STEP)
  );
}

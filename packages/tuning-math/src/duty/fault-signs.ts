import type { PeakMixture } from './peak-mixture.js';
import { chancePeakAbove, predictPeak } from './predict-peak.js';
import { responsePosterior } from './response-posterior.js';
import { scalePulls, type ScaledPulls } from './scaled-pulls.js';
import { drawParticles, type Particles } from './draw-particles.js';
import type { DutySituation } from './duty-situation.js';

/** Curves drawn for this look. */
const SIGN_PARTICLES = 250;
/** ... out of so many of every five of the library. */
const SIGN_OF_FIVE = 1;
/** Half the width over which a density is taken, log. */
const DENSITY_STEP = 0.01;

/** How surprising the last pulls are to what the pulls before them say; not at all where the last is plainly in line. */
export interface FaultSigns {
  /** Chance of a peak at least as high as the last one. */
  readonly chanceAsHigh: number;
  /** Chance of a peak at most as high as the last one. */
  readonly chanceAsLow: number;
  /** Density of the last reading, per unit of log peak. */
  readonly density: number;
  /**
   * The larger of the last two pulls' chances, both judged by the pulls before the two; 1 where there are too few, or one
   * of them is plainly in line with those.
   */
  readonly bothAsLow: number;
  readonly bothAsHigh: number;
  /** The largest of the last three pulls' chances of a peak at most as high, judged likewise by the pulls before the three. */
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

/**
 * Judges the last pulls by the pulls before them. Costs one more draw of curves and up to three small posteriors: two
 * pulls or three are looked at together only where each of them may be out of line.
 */
export function faultSigns(situation: DutySituation): FaultSigns {
  const { pulls } = situation;
  const { count } = pulls;
  if (count === 0 || isPlainlyInLine(pulls)) return NO_SIGNS;
  const particles = drawParticles(pullsBefore(situation, Math.min(2, count)), {
    count: SIGN_PARTICLES,
    ofFive: SIGN_OF_FIVE,
    withoutDoubted: 0,
  });
  const [last = NO_LOOK] = looksAt(situation, particles, 1);
  const single = { chanceAsHigh: last.above, chanceAsLow: 1 - last.above, density: last.density };
  const mayBeLow = (held: number): boolean => count > held && !areSomeInLine(pulls, held, isNotLow);
  const mayBeHigh = (held: number): boolean => count > held && !areSomeInLine(pulls, held, isNotHigh);
  const pair = mayBeLow(2) || mayBeHigh(2) ? looksAt(situation, particles, 2) : [NO_LOOK];
  const three = mayBeLow(3) ? looksAt(situation, particles, 3) : [];
  return {
    ...single,
    bothAsLow: mayBeLow(2) ? Math.max(...pair.map(({ above }) => 1 - above)) : 1,
    bothAsHigh: mayBeHigh(2) ? Math.max(...pair.map(({ above }) => above)) : 1,
    threeAsLow: mayBeLow(3) ? Math.max(...three.map(({ above }) => 1 - above)) : 1,
  };
}

/** So many earlier pulls show that a reading is in line: one of them may be false, hardly both. */
const WITNESSES = 2;

/** Whether a pull, at the second position, shows that one after it is not out of line. */
type Witness = (pulls: ScaledPulls, pull: number, earlier: number) => boolean;

/** Made no less than an earlier one at as much duty or more. */
const isNotLow: Witness = ({ duties, logs }, pull, earlier) =>
  (duties[earlier] as number) >= (duties[pull] as number) &&
  (logs[earlier] as number) <= (logs[pull] as number);

/** Made no more than an earlier one at as much duty or less. */
const isNotHigh: Witness = ({ duties, logs }, pull, earlier) =>
  (duties[earlier] as number) <= (duties[pull] as number) &&
  (logs[earlier] as number) >= (logs[pull] as number);

/** Whether one of the last pulls is plainly in line with the pulls before them: peaks do not fall as duty rises. */
function areSomeInLine(pulls: ScaledPulls, held: number, isWitness: Witness): boolean {
  const before = pulls.count - held;
  return Array.from({ length: held }, (_, index) => before + index).some((pull) =>
    isInLine(pulls, pull, before, isWitness),
  );
}

/** Whether enough of so many first pulls show it of one after them. */
function isInLine(pulls: ScaledPulls, pull: number, before: number, isWitness: Witness): boolean {
  let witnesses = 0;
  for (let earlier = 0; earlier < before; earlier += 1) if (isWitness(pulls, pull, earlier)) witnesses += 1;
  return witnesses >= WITNESSES;
}

/** Most pulls that are judged together. */
const MOST_HELD = 3;

/** Whether pulls before the last three show that the last one is neither low nor high: then there is nothing to judge. */
function isPlainlyInLine(pulls: ScaledPulls): boolean {
  const before = pulls.count - MOST_HELD;
  return [isNotLow, isNotHigh].every((isWitness) => isInLine(pulls, pulls.count - 1, before, isWitness));
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

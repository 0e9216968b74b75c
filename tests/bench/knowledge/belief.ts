import { soakAfter, type Random, type RiseDraw } from '@pullbook/practice-car';
import { normalCdf } from '@pullbook/tuning-math';
import type { CarGuess, KnownCar } from './car-guess.js';
import { guessCloud, type GuessCloud, type Reading } from './guess-cloud.js';

/** A formula this much less likely than the best is given up. */
const GIVEN_UP = 1e-5;

/** What one who knows the formulas believes of a car. */
export interface Belief {
  /** Mean over all cars that the readings so far leave standing. */
  readonly expect: (figure: (guess: CarGuess) => number) => number;
  /** Takes in the readings that are new. */
  readonly learn: (readings: readonly Reading[]) => void;
}

/** Which formulas are thought possible, each as likely as the others, and how many guesses are kept of each. */
export interface BeliefOptions {
  readonly known: KnownCar;
  readonly formulas: readonly RiseDraw[];
  readonly perFormula: number;
  readonly random: Random;
}

/**
 * The posterior over all cars that some formulas make, each formula weighed by how likely it makes the readings.
 * Source: Bayesian model averaging, Hoeting et al., Stat. Sci. 14 (1999); see `guessCloud`.
 */
export function belief({ known, formulas, perFormula, random }: BeliefOptions): Belief {
  let clouds = formulas
    .map((rise) => guessCloud({ known, rise, count: perFormula, random }))
    .filter((cloud): cloud is GuessCloud => cloud !== null);
  let shares = sharesOf(clouds);
  let learnt = 0;
  const learn = (readings: readonly Reading[]): void => {
    for (; learnt < readings.length; learnt += 1) {
      for (const cloud of clouds) cloud.learn(readings.slice(0, learnt + 1));
      const most = Math.max(...clouds.map((cloud) => cloud.logEvidence()));
      clouds = clouds.filter((cloud) => cloud.logEvidence() > most + Math.log(GIVEN_UP));
      shares = sharesOf(clouds);
    }
  };
  const expect = (figure: (guess: CarGuess) => number): number =>
    clouds.reduce((sum, cloud, index) => sum + (shares[index] as number) * meanOf(cloud, figure), 0);
  return { expect, learn };
}

function sharesOf(clouds: readonly GuessCloud[]): number[] {
  const most = Math.max(...clouds.map((cloud) => cloud.logEvidence()));
  const weights = clouds.map((cloud) => Math.exp(cloud.logEvidence() - most));
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  return weights.map((weight) => weight / total);
}

function meanOf(cloud: GuessCloud, figure: (guess: CarGuess) => number): number {
  const guesses = cloud.guesses();
  let sum = 0;
  for (const guess of guesses) sum += figure(guess);
  return sum / guesses.length;
}

/** Mean peak of a guessed car after so many pulls, kPa. */
export function guessedMeanKpa(guess: CarGuess, duty: number, pullsBefore: number): number {
  return guess.meanKpa(duty) * soakAfter(guess, pullsBefore);
}

/** Chance that the next reading of a guessed car is over a level; false pulls read low. */
export function guessedChanceOver(guess: CarGuess, meanKpa: number, levelKpa: number): number {
  return (1 - guess.falsePullShare) * normalCdf((1 - levelKpa / meanKpa) / guess.scatterRatio);
}

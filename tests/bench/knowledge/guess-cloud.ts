import type { Random, RiseDraw } from '@pullbook/practice-car';
import { carGuess, GUESS_NUMBERS, type CarGuess, type KnownCar } from './car-guess.js';
import { movedNumbers } from './moved-numbers.js';
import { readingLikelihood } from './reading-likelihood.js';

/** A reading at a duty. */
export interface Reading {
  readonly duty: number;
  readonly peakKpa: number;
}

interface Weighed {
  guess: CarGuess;
  /** Log likelihood of all readings so far. */
  fit: number;
}

/** Cars of one formula as the readings so far leave them standing: equally likely samples of the posterior. */
export interface GuessCloud {
  readonly guesses: () => readonly CarGuess[];
  /** Log of how likely this formula makes the readings. */
  readonly logEvidence: () => number;
  readonly learn: (readings: readonly Reading[]) => void;
}

/** How a cloud is kept. */
export interface CloudOptions {
  readonly known: KnownCar;
  readonly rise: RiseDraw;
  readonly count: number;
  readonly random: Random;
}

/** Before the first reading so many times the guesses are kept. */
const FIRST_CROWD = 8;
/** Times that each guess is moved after a reading. */
const MOVES = 5;
/** Draws for one first guess, on average, before a formula is taken as making no such car. */
const MOST_DRAWS = 400;

/**
 * Samples of the cars that one formula can make, given what is known; null if it makes none such. After each reading they
 * are weighed, resampled and moved by Metropolis steps in the numbers that they are drawn from, so that they are samples
 * of the exact posterior but for their finite number.
 *
 * Source: sequential Monte Carlo samplers, Del Moral, Doucet & Jasra, J. R. Stat. Soc. B 68 (2006); steps in the space of
 * the random numbers, Kelemen et al., Comput. Graph. Forum 21 (2002); differences of other samples as steps, ter Braak, Stat.
 * Comput. 16 (2006).
 */
export function guessCloud({ known, rise, count, random }: CloudOptions): GuessCloud | null {
  const first = firstGuesses({ known, rise, count: FIRST_CROWD * count, random });
  if (first.length === 0) return null;
  const weights = first.map(({ logPrior }) => Math.exp(logPrior));
  let cloud = resample(first, weights, FIRST_CROWD * count, random).map((guess) => ({ guess, fit: 0 }));
  let logEvidence = 0;
  const learn = (readings: readonly Reading[]): void => {
    const last = readings.length - 1;
    const gains = cloud.map(({ guess }) => readingLikelihood(guess, readings[last] as Reading, last));
    const most = Math.max(...gains);
    const shares = gains.map((gain) => Math.exp(gain - most));
    logEvidence += most + Math.log(shares.reduce((sum, share) => sum + share, 0) / shares.length);
    const weighed = cloud.map(({ guess, fit }, index) => ({ guess, fit: fit + (gains[index] as number) }));
    cloud = resample(weighed, shares, count, random).map((one) => ({ ...one }));
    for (let move = 0; move < MOVES; move += 1) moveAll(cloud, { known, rise, random, readings });
  };
  return { guesses: () => cloud.map(({ guess }) => guess), logEvidence: () => logEvidence, learn };
}

function firstGuesses({ known, rise, count, random }: CloudOptions): CarGuess[] {
  const found: CarGuess[] = [];
  for (let draw = 0; draw < MOST_DRAWS * count && found.length < count; draw += 1) {
    const guess = carGuess(known, rise, Float64Array.from({ length: GUESS_NUMBERS }, random));
    if (guess) found.push(guess);
  }
  return found;
}

/** Systematic resampling. */
function resample<T>(items: readonly T[], weights: readonly number[], count: number, random: Random): T[] {
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  const start = random();
  const chosen: T[] = [];
  let passed = 0;
  items.forEach((item, index) => {
    passed += weights[index] as number;
    while (chosen.length < count && (chosen.length + start) * total < passed * count) chosen.push(item);
  });
  const last = items[items.length - 1] as T;
  while (chosen.length < count) chosen.push(last);
  return chosen;
}

interface Ground {
  readonly known: KnownCar;
  readonly rise: RiseDraw;
  readonly random: Random;
  readonly readings: readonly Reading[];
}

/** One Metropolis step for each guess. */
function moveAll(cloud: Weighed[], { known, rise, random, readings }: Ground): void {
  const numbersOf = (index: number): Float64Array => (cloud[index] as Weighed).guess.numbers;
  cloud.forEach((one) => {
    const numbers = movedNumbers(one.guess.numbers, { random, count: cloud.length, numbersOf });
    const guess = carGuess(known, rise, numbers);
    if (!guess) return;
    let fit = 0;
    readings.forEach((reading, before) => (fit += readingLikelihood(guess, reading, before)));
    if (Math.log(random()) >= fit + guess.logPrior - one.fit - one.guess.logPrior) return;
    one.guess = guess;
    one.fit = fit;
  });
}

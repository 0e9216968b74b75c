import { DEVELOPMENT_SHAPES, driveShapeCar, seededRandom, type ShapeCar } from '@pullbook/practice-car';
import { describe, expect, it } from 'vitest';
import { OURS } from '../advice/methods.js';
import { scoreRuns } from '../advice/score-runs.js';
import { tuneCar } from '../advice/tune-car.js';
import { belief, guessedMeanKpa } from './belief.js';
import { methodOf, type Who } from './believers.js';
import { carGuess, GUESS_NUMBERS, type CarGuess } from './car-guess.js';
import { healthyCars } from './healthy-cars.js';
import { readingLikelihood } from './reading-likelihood.js';

const CARS = healthyCars({ set: 'development', count: 400, seed: 411 });
const formulaOf = ({ shape }: ShapeCar) =>
  DEVELOPMENT_SHAPES.filter((entry) => entry.shape.name === shape.name).flatMap(({ rises }) => rises);
const ofShape = (name: string): ShapeCar[] => CARS.filter(({ shape }) => shape.name === name);
const readingsOf = (car: ShapeCar, duties: readonly number[]) => {
  const drive = driveShapeCar(car);
  return duties.map((duty) => {
    return { duty, peakKpa: drive.pull(duty).peakKpa };
  });
};

describe('readingLikelihood(guess, reading, pullsBefore)', () => {
  const [car] = CARS as [ShapeCar];
  const truth = { ...car.truth, scatterRatio: 0.02, falsePullShare: 0.2 };
  const density = (ratio: number): number =>
    Math.exp(readingLikelihood(truth, { duty: 30, peakKpa: ratio * truth.meanKpa(30) }, 0));

  it('is the density of the readings that the car gives', () => {
    const step = 0.0005;
    const below = (level: number): number => {
      let share = 0;
      for (let ratio = 0.5; ratio < level; ratio += step) share += step * density(ratio + step / 2);
      return share;
    };
    const count = 8000;
    const readings = Array.from({ length: count }, (_, seed) => {
      const { peakKpa } = driveShapeCar({ ...car, truth, seed }).pull(30);
      return peakKpa / truth.meanKpa(30);
    });
    for (const level of [0.85, 0.9, 0.95, 0.98, 1, 1.02]) {
      const share = readings.filter((ratio) => ratio < level).length / count;
      // Four standard errors of a share, and what the density leaves out (see there).
      expect(Math.abs(below(level) - share)).toBeLessThan(4 * Math.sqrt(0.25 / count) + 0.003);
    }
  });
});

describe('belief(options)', () => {
  it('agrees with weighing draws from the prior, the textbook way that needs no moves', () => {
    const [car] = ofShape('logistic') as [ShapeCar];
    const [rise] = formulaOf(car) as [ReturnType<typeof formulaOf>[number]];
    const readings = readingsOf(car, [10, 20, 30]);
    const figure = (guess: CarGuess): number => Math.log(guessedMeanKpa(guess, 40, 3) / car.goal.targetKpa);
    const random = seededRandom(5);
    let [sum, squares, weights, weightSquares] = [0, 0, 0, 0];
    for (let draw = 0; draw < 150_000; draw += 1) {
      const guess = carGuess(car, rise, Float64Array.from({ length: GUESS_NUMBERS }, random));
      if (!guess) continue;
      let log = guess.logPrior;
      readings.forEach((reading, before) => (log += readingLikelihood(guess, reading, before)));
      const weight = Math.exp(log);
      sum += weight * figure(guess);
      squares += weight * figure(guess) ** 2;
      weights += weight;
      weightSquares += weight * weight;
    }
    const mean = sum / weights;
    const spread = Math.sqrt(squares / weights - mean * mean);
    const effective = weights ** 2 / weightSquares;
    expect(effective).toBeGreaterThan(300);
    const believed = belief({ known: car, formulas: [rise], perFormula: 1500, random: seededRandom(6) });
    believed.learn(readings);
    const own = believed.expect(figure);
    const ownSpread = Math.sqrt(believed.expect((guess) => (figure(guess) - own) ** 2));
    // Five standard errors of the draws, and as much for samples that hang together (a tenth of them counted).
    expect(Math.abs(own - mean)).toBeLessThan(5 * spread * (effective ** -0.5 + 150 ** -0.5));
    expect(ownSpread / spread).toBeGreaterThan(0.75);
    expect(ownSpread / spread).toBeLessThan(1.35);
  });

  it('holds what it promises: the true mean is as often below as it says', () => {
    const cars = ['logistic', 'hill', 'soft limit', 'arc step'].flatMap((name) => ofShape(name).slice(0, 15));
    const places = cars.map((car) => {
      const believed = belief({
        known: car,
        formulas: formulaOf(car),
        perFormula: 200,
        random: seededRandom(car.seed),
      });
      const drive = driveShapeCar(car);
      const duties = [10, 20, 30, 40];
      const readings = duties.map((duty) => ({ duty, peakKpa: drive.pull(duty).peakKpa }));
      believed.learn(readings);
      const trueKpa = drive.meanNowKpa(45);
      return believed.expect((guess) => (guessedMeanKpa(guess, 45, duties.length - 1) < trueKpa ? 1 : 0));
    });
    const inMiddle = places.filter((place) => place > 0.1 && place < 0.9).length;
    // 80 % of 60, binomial: between 38 and 56 with a chance of 99.9 %.
    expect(cars).toHaveLength(60);
    expect(inMiddle).toBeGreaterThanOrEqual(38);
    expect(inMiddle).toBeLessThanOrEqual(56);
  });
});

describe('a believer', () => {
  it('who knows the formula needs fewer pulls than the advice, and breaks no rule', () => {
    const cars = ['logistic', 'force balance', 'near linear'].flatMap((name) => ofShape(name).slice(0, 4));
    const scoreOf = (who: Who) =>
      scoreRuns(cars.map((car) => ({ ...tuneCar(car, methodOf(who, car, 'development')), car })));
    const [ours, theirs] = [scoreOf(OURS), scoreOf('own')];
    expect(theirs.accepts).toBe(cars.length);
    expect(theirs.violations).toBe(0);
    expect(theirs.overOracle).toBeLessThan(ours.overOracle);
  });
});

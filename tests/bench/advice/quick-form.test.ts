import { beforeAll, describe, expect, it } from 'vitest';
import { OURS } from './methods.js';
import { carsOf, runOne } from './run-lot.js';
import { runLots } from './run-lots.js';
import { scoreRuns, type Score } from './score-runs.js';
import type { TuningRun } from './tune-car.js';

/** Development cars: what fails here is looked into, which the judgement cars must be spared. */
const LOT = { set: 'development', count: 60, seed: 311 } as const;

/**
 * What the advice must keep to on any sixty cars. Generous, since sixty cars are few: `npm run bench:advice`
 * measures, this only catches what breaks.
 */
const BOUNDS: readonly (readonly [string, (score: Score) => boolean])[] = [
  ['breaks no step, range or grid', ({ violations }) => violations === 0],
  ['passes the ceiling on few cars', ({ passedPct }) => passedPct <= 2.5],
  ['passes it far on hardly any', ({ passedFarPct }) => passedFarPct <= 2],
  ['accepts few wrongly', ({ wrongPct }) => wrongPct <= 7],
  ['accepts none far off', ({ wrongFarPct }) => wrongFarPct <= 2.5],
  ['stops few reachable targets', ({ stoppedPct }) => stoppedPct <= 2.5],
  ['has few sound cars looked over', ({ lookedOverPct }) => lookedOverPct <= 7],
  ['needs few pulls', ({ overOracle }) => overOracle <= 5.5],
  ['stops every unreachable target', ({ unreachableStoppedPct }) => unreachableStoppedPct === 100],
  [
    'stops every soaring fault at once',
    (score) => score.soaringStoppedPct === 100 && score.soaringPulls === 1,
  ],
  ['stops every falling fault', ({ fallingStoppedPct }) => fallingStoppedPct === 100],
  ['and soon', ({ fallingPulls }) => fallingPulls <= 5],
];

function score(method: string): Score {
  const lot = { ...LOT, method };
  return scoreRuns(carsOf(lot).map((car): TuningRun => ({ ...runOne(lot, car), car })));
}

const broken = (result: Score): string[] =>
  BOUNDS.filter(([, keeps]) => !keeps(result)).map(([name]) => name);

describe('the advice on sixty practice cars', () => {
  let ours: Score;
  beforeAll(() => {
    ours = score(OURS);
  });

  it('keeps its bounds', () => {
    expect(broken(ours), JSON.stringify(ours)).toEqual([]);
  });

  it('meets cars of every kind, so that each bound has something to hold', () => {
    expect(ours.accepts).toBeGreaterThan(30);
    for (const count of [ours.unreachable, ours.soaring, ours.falling]) expect(count).toBeGreaterThan(0);
  });

  it('is told from a ladder of ten by the same bounds', () => {
    const ceilingBounds = ['passes the ceiling on few cars', 'passes it far on hardly any'];
    expect(broken(score('ladder of 10'))).toEqual(expect.arrayContaining(ceilingBounds));
  });
});

describe('runLots(lots, threads)', () => {
  it('gives the same runs in the same places for one thread and for three', async () => {
    const lots = ['secant', 'ladder of 5'].map((method) => ({ ...LOT, method }));
    const untimed = (runs: TuningRun[][]): unknown =>
      runs.map((lot) => lot.map(({ car, pulls, end, acceptedDuty }) => [car.seed, pulls, end, acceptedDuty]));
    const [one, three] = [await runLots(lots, 1), await runLots(lots, 3)];
    expect(untimed(three)).toEqual(untimed(one));
    expect(one.map((lot) => lot.every(({ pulls }) => Array.isArray(pulls)))).toEqual([true, true]);
  });
});

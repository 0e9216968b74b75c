import { OURS } from '../advice/methods.js';
import { oraclePulls } from '../advice/oracle.js';
import { scoreRuns } from '../advice/score-runs.js';
import { shareIntervalPct } from '../advice/share-interval-pct.js';
import type { TuningRun } from '../advice/tune-car.js';
import { BELIEVERS, type Who } from './believers.js';

/** The runs of one. */
export interface KnowledgeRuns {
  readonly who: Who;
  readonly runs: readonly TuningRun[];
}

/** How the runs were made. */
export interface KnowledgeMade {
  readonly set: string;
  readonly seed: number;
  readonly commit: string;
  readonly minutes: number;
}

/** The page: what each needs on the same cars. */
export function knowledgeLines(all: readonly KnowledgeRuns[], made: KnowledgeMade): string[] {
  const cars = all[0]?.runs.length ?? 0;
  return [
    '# What it would be worth to know more before the first pull',
    '',
    `Made by \`npm run bench:knowledge\` with seed ${made.seed} on ${cars} cars of the ${made.set} shapes that can be tuned, at commit ${made.commit}, in ${made.minutes.toFixed(0)} minutes.`,
    '',
    `Beside Pullbook stand believers: they know the formulas that the cars are drawn from, with the ranges of every figure (base boost, scatter, heat soak, false pulls), and hold the exact posterior over all such cars (but for a finite number of samples). No workshop can know that. They reckon with nothing else, not even with faults. One who knows all formulas but the car's own stands where every method stands that leans on formulas: on a car that none of them describes it is surer than it may be, and accepts wrongly. In brackets: between what the figure may lie by the choice of cars alone (95 %).`,
    '',
    `| who | over the oracle, mean | passed the ceiling, % of cars | by more than 5 % | wrong accepts, % | not accepted, % |`,
    '| --- | --- | --- | --- | --- | --- |',
    ...all.map(row),
    '',
    `Careful ones ask ${pct(BELIEVERS.all.boldness.confidence)} for an accept and keep each pull's chance of passing the ceiling under ${pct(BELIEVERS.all.boldness.riskLimit)}; bold ones ${pct(BELIEVERS['all, bold'].boldness.confidence)} and ${pct(BELIEVERS['all, bold'].boldness.riskLimit)}. Both were chosen on development cars. What the columns mean: \`tests/bench/advice/score-runs.ts\`.`,
    '',
  ];
}

const pct = (share: number): string => `${Number((100 * share).toFixed(2))} %`;

function row({ who, runs }: KnowledgeRuns): string {
  const { accepts, passedPct, passedFarPct, wrongPct } = scoreRuns(runs);
  const over = runs
    .filter(({ end }) => end === 'accept')
    .map((run) => run.pulls.length - oraclePulls(run.car, run.pulls[0]?.duty ?? 0));
  const cells = [
    who === OURS ? 'Pullbook' : BELIEVERS[who].says,
    meanWithRange(over),
    shareWithRange(passedPct, runs.length),
    shareWithRange(passedFarPct, runs.length),
    shareWithRange(wrongPct, accepts),
    shareWithRange(100 * (1 - accepts / runs.length), runs.length),
  ];
  return `| ${cells.join(' | ')} |`;
}

const SPREADS = 1.96;

function meanWithRange(values: readonly number[]): string {
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  const square = values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / Math.max(values.length - 1, 1);
  const half = SPREADS * Math.sqrt(square / values.length);
  return `${mean.toFixed(2)} (${(mean - half).toFixed(2)} to ${(mean + half).toFixed(2)})`;
}

function shareWithRange(pct: number, count: number): string {
  const [low, high] = shareIntervalPct(pct, count).map((end) => Math.abs(end).toFixed(1));
  return `${pct.toFixed(1)} (${low} to ${high})`;
}

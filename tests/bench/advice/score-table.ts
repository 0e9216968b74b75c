import type { Score } from './score-runs.js';

const columns: ReadonlyArray<readonly [string, (score: Score) => string]> = [
  ['cars', (s) => String(s.cars)],
  ['pulls to accept, median / p90', (s) => (s.accepts === 0 ? '–' : `${s.pullsMedian} / ${s.pullsP90}`)],
  ['over the oracle, mean', (s) => (s.accepts === 0 ? '–' : s.overOracle.toFixed(2))],
  ['passed the ceiling, % of cars', (s) => s.passedPct.toFixed(1)],
  ['by more than 5 %', (s) => s.passedFarPct.toFixed(1)],
  ['worst excess, %', (s) => s.worstExcessPct.toFixed(1)],
  ['wrong accepts, %', (s) => s.wrongPct.toFixed(1)],
  ['wrong by half a tolerance more', (s) => s.wrongFarPct.toFixed(1)],
  ['reachable, not accepted, %', (s) => (s.healthy === 0 ? '–' : s.stoppedPct.toFixed(1))],
  ['sound, looked over in vain, %', (s) => (s.healthy === 0 ? '–' : s.lookedOverPct.toFixed(1))],
  ['unreachable stopped, % / pulls past the range', (s) => sayUnreachable(s)],
  ['soaring faults stopped, % / pulls', (s) => sayFault(s.soaring, s.soaringStoppedPct, s.soaringPulls)],
  ['falling faults stopped, % / pulls', (s) => sayFault(s.falling, s.fallingStoppedPct, s.fallingPulls)],
  ['rule violations', (s) => String(s.violations)],
];

function sayUnreachable(score: Score): string {
  if (score.unreachable === 0) return '–';
  return `${share(score.unreachableStoppedPct)} / ${score.unreachableWaste.toFixed(1)}`;
}

function sayFault(count: number, stoppedPct: number, pulls: number): string {
  return count === 0 ? '–' : `${share(stoppedPct)} / ${pulls.toFixed(1)}`;
}

/** 100 only where it is all of them. */
function share(pct: number): string {
  return pct === 100 ? '100' : pct.toFixed(1);
}

const line = (cells: readonly string[]): string => `| ${cells.join(' | ')} |`;

/** Lines of a table with one row for each score. */
export function scoreTable(first: string, rows: ReadonlyArray<readonly [string, Score]>): string[] {
  return [
    line([first, ...columns.map(([name]) => name)]),
    line([first, ...columns].map(() => '---')),
    ...rows.map(([name, score]) => line([name, ...columns.map(([, say]) => say(score))])),
  ];
}

import { scoreDrift } from './measure-drift.js';
import { scoreForecast } from './measure-forecast.js';
import { scoreGateHold } from './measure-gate-hold.js';
import { scoreHunting } from './measure-hunting.js';
import { scoreProof } from './measure-proof.js';
import type { TaskRows } from './tasks.js';

const percent = (share: number): string => `${(100 * share).toFixed(1)} %`;
const line = (what: string, measured: string, wanted: string): string =>
  `| ${what} | ${measured} | ${wanted} |`;

/** The whole table, line by line. */
export function reportLines(rows: TaskRows): string[] {
  return [
    '| what | measured | wanted |',
    '| --- | --- | --- |',
    ...gateHoldLines(rows),
    proofLine("proof, the preset's own scatter", rows['proof-own']),
    proofLine('proof, workshop scatter of 1.5 % pooled in', rows['proof-pooled']),
    forecastLine(rows),
    driftLine('drift of 4 %, common scatter assumed', rows['drift-assumed']),
    driftLine('drift of 4 %, scatter of the car known', rows['drift-known']),
    ...huntingLines(rows),
  ];
}

function gateHoldLines(rows: TaskRows): string[] {
  const score = scoreGateHold(rows['gate-hold']);
  const cars = rows['gate-hold'].length;
  const of = (count: number): string => `${count} of ${cars} cars (${percent(count / cars)})`;
  const ends = [...score.ends]
    .sort(([, a], [, b]) => b - a)
    .map(([end, count]) => `${end} ${count}`)
    .join(', ');
  return [
    line('gate hold, found', of(score.found), 'every car'),
    line(
      'gate hold, within 3 points of the best',
      `${of(score.withinThree)}; median ${score.medianMiss} points low; too high by more: ${of(score.tooHigh)}`,
      'every car',
    ),
    line(
      'gate hold, pulls',
      `median ${score.medianPulls}, 90 % within ${score.p90Pulls}`,
      'median at most 6',
    ),
    line('gate hold, a pull past the ceiling', of(score.pastCeiling), 'at most 0.5 % of cars'),
    line('gate hold, time of a decision', `${score.msPerDecision.toFixed(0)} ms of one core`, 'under 20 ms'),
    line('gate hold, how it ended', ends, ''),
  ];
}

function proofLine(name: string, rows: TaskRows['proof-own']): string {
  const { cars, proven, wrong, medianPulls } = scoreProof(rows);
  const share = `${percent(wrong / cars)} of cars, ${percent(wrong / proven)} of those proven`;
  return line(
    name,
    `${proven} of ${cars} proven, median ${medianPulls} pulls, wrong ${share}`,
    'wrong in at most 5 %',
  );
}

function forecastLine(rows: TaskRows): string {
  const { cars, forecasts, held, known, knownHeld } = scoreForecast(rows.forecast);
  return line(
    `forecast range of 95 %, ${cars} physical cars`,
    `held ${percent(held / forecasts)} of ${forecasts}; ${percent(knownHeld / known)} of the ${known} with nothing unknown`,
    '93 to 97 %',
  );
}

function driftLine(name: string, rows: TaskRows['drift-known']): string {
  const { medianPulls, p90Pulls, foundWithin20, pullsPerFalseAlarm } = scoreDrift(rows);
  const found = `median ${medianPulls} pulls, 90 % within ${p90Pulls}, found within 20: ${percent(foundWithin20)}`;
  const alarms = `one false alarm in ${pullsPerFalseAlarm.toFixed(0)} pulls`;
  return line(name, `${found}; ${alarms}`, 'median 4 pulls, one false alarm in 370 or more');
}

function huntingLines(rows: TaskRows): string[] {
  const score = scoreHunting(rows.hunting);
  const of = (count: number): string => `${count} of ${score.logs} logs (${percent(count / score.logs)})`;
  return [
    line(
      'hunting at 50 Hz, frequency within 5 %',
      `${of(score.frequencyHeld)}; 95 % within ${percent(score.p95FrequencyMissRatio)}; found in ${of(score.found)}`,
      'within 5 %',
    ),
    line(
      'hunting at 50 Hz, damping ratio within 0.05',
      `${of(score.dampingHeld)}; 95 % within ${score.p95DampingMiss.toFixed(3)}`,
      'within 0.05',
    ),
  ];
}

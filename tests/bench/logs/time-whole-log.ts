import { spawnSync } from 'node:child_process';
import fs from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';

/** What one way through the file took, in its own process. */
export interface WayTaken {
  readonly seconds: number;
  readonly peakMegabytes: number;
  readonly detail: string;
}

/** The analysis beside the fastest parser, several rounds of each in turn; the best round of each. */
export interface WholeLogTiming {
  readonly fileMegabytes: number;
  readonly rowCount: number;
  readonly parser: WayTaken;
  readonly analysis: WayTaken;
  readonly ratio: number;
}

const HEADERS =
  'Time (s),Boost (kPa),MAP (kPa),Baro (kPa),Engine speed (rpm),Vehicle speed (km/h),Throttle (%),Pedal (%),Gear,' +
  'Intake temp (C),Coolant temp (C),Oil temp (C),EGT (C),Lambda,Knock retard (deg),Ignition (deg),Duty (%),' +
  'Fuel pressure (bar),Battery (V),Injector (ms)';
const RATE_HZ = 50;
const CYCLE_S = 60;
const PULL_FROM_S = 20;
const PULL_TO_S = 28;
const ROUNDS = 3;

/** Writes a log of 20 channels and about so many bytes: cruising, and a pull of eight seconds each minute. */
export function writeBigLog(file: string, byteCount: number): number {
  const handle = fs.openSync(file, 'w');
  let text = `${HEADERS}\r\n`;
  let written = 0;
  let row = 0;
  let state = 1;
  const random = (): number => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return state / 2 ** 32;
  };
  while (written + text.length < byteCount) {
    text += bigRow(row / RATE_HZ, random);
    row += 1;
    if (text.length < 1 << 20) continue;
    written += fs.writeSync(handle, text);
    text = '';
  }
  fs.writeSync(handle, text);
  fs.closeSync(handle);
  return row;
}

function bigRow(timeS: number, random: () => number): string {
  const phaseS = timeS % CYCLE_S;
  const isPull = phaseS >= PULL_FROM_S && phaseS < PULL_TO_S;
  const sinceS = phaseS - PULL_FROM_S;
  const boost =
    (isPull ? 140 * (1 - Math.exp(-sinceS / 0.5)) - 50 * Math.exp(-sinceS / 0.3) : -50) + random();
  const rpm = isPull ? 2000 + 550 * sinceS : 1900 + 100 * Math.sin(timeS);
  const load = isPull ? '100.0' : (15 + 5 * random()).toFixed(1);
  return (
    `${timeS.toFixed(2)},${boost.toFixed(2)},${(boost + 101.3).toFixed(2)},101.3,${rpm.toFixed(0)},${(rpm / 48).toFixed(2)},` +
    `${load},${load},3,${(30 + random()).toFixed(1)},${(90 + random()).toFixed(1)},${(100 + random()).toFixed(1)},` +
    `${(700 + 50 * random()).toFixed(0)},${(0.8 + 0.05 * random()).toFixed(3)},0.0,${(20 + 5 * random()).toFixed(1)},40.0,` +
    `${(3 + 0.1 * random()).toFixed(2)},${(13.8 + 0.2 * random()).toFixed(2)},${(8 + random()).toFixed(3)}\r\n`
  );
}

/** Runs both ways over a file of `byteCount` bytes, in turn, each in a process of its own. */
export function timeWholeLog(byteCount: number): WholeLogTiming {
  const file = path.join(fs.mkdtempSync(path.join(os.tmpdir(), 'pullbook-log-')), 'big.csv');
  const rowCount = writeBigLog(file, byteCount);
  const taken = { parser: [] as WayTaken[], analysis: [] as WayTaken[] };
  for (let round = 0; round < ROUNDS; round += 1) {
    taken.parser.push(takeWay('parser', file));
    taken.analysis.push(takeWay('analysis', file));
  }
  fs.rmSync(path.dirname(file), { recursive: true });
  const best = (ways: readonly WayTaken[]): WayTaken =>
    ways.reduce((a, b) => (b.seconds < a.seconds ? b : a));
  const [parser, analysis] = [best(taken.parser), best(taken.analysis)];
  return {
    fileMegabytes: byteCount / 1e6,
    rowCount,
    parser,
    analysis,
    ratio: analysis.seconds / parser.seconds,
  };
}

/** One way through the file, in a process of its own. */
export function takeWay(way: 'parser' | 'analysis', file: string): WayTaken {
  const script = fileURLToPath(new URL(`take-${way}.ts`, import.meta.url));
  const run = spawnSync(process.execPath, ['--conditions=pullbook-source', '--import', 'tsx', script, file], {
    encoding: 'utf8',
  });
  if (run.status !== 0) throw new Error(`${way} failed: ${run.stderr}`);
  return JSON.parse(run.stdout) as WayTaken;
}

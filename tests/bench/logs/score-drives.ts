import { analyseLog, type LogPull } from '@pullbook/tuning-math';
import { recordDrive, type RecordedDrive, type TruePull } from './record-drives.js';

/** Counts of what came out right, over many drives. */
export interface DriveScore {
  readonly name: string;
  readonly right: number;
  readonly of: number;
}

/** One pull that came out wrong, for reading after. */
export interface Miss {
  readonly score: string;
  readonly seed: number;
  readonly text: string;
}

const UNUSABLE = ['lifted', 'short', 'slipped', 'wrong-gear', 'sensor-full-scale'];
const FAST_HZ = 50;

/** Runs drives `firstSeed` … through the analysis and counts against their truth. */
export function scoreDrives(firstSeed: number, count: number): { scores: DriveScore[]; misses: Miss[] } {
  const tally = new Tally();
  for (let seed = firstSeed; seed < firstSeed + count; seed += 1) scoreDrive(recordDrive(seed), tally);
  return tally.result();
}

class Tally {
  readonly #scores = new Map<string, { right: number; of: number }>();
  readonly #misses: Miss[] = [];

  count(score: string, isRight: boolean, miss: Omit<Miss, 'score'>): void {
    const entry = this.#scores.get(score) ?? { right: 0, of: 0 };
    this.#scores.set(score, { right: entry.right + (isRight ? 1 : 0), of: entry.of + 1 });
    if (!isRight) this.#misses.push({ score, ...miss });
  }

  result(): { scores: DriveScore[]; misses: Miss[] } {
    return { scores: [...this.#scores].map(([name, entry]) => ({ name, ...entry })), misses: this.#misses };
  }
}

function scoreDrive(drive: RecordedDrive, tally: Tally): void {
  const { pulls } = analyseLog(drive.csv, drive.options);
  for (const truth of drive.truth) {
    const found = pulls.filter((pull) => pull.startS < truth.endS && pull.endS > truth.startS);
    scorePull(drive, truth, found, tally);
  }
  for (const pull of pulls) {
    const isTrue = drive.truth.some((truth) => pull.startS < truth.endS && pull.endS > truth.startS);
    tally.count('found pulls that were driven', isTrue, {
      seed: drive.seed,
      text: `${pull.startS} to ${pull.endS} s`,
    });
  }
}

function scorePull(drive: RecordedDrive, truth: TruePull, found: readonly LogPull[], tally: Tally): void {
  const [pull] = found;
  const { seed, rateHz } = drive;
  const say = (text: string): { seed: number; text: string } => ({
    seed,
    text: `${rateHz} Hz ${drive.style.name} ${truth.startS.toFixed(1)} s: ${text}`,
  });
  const isSound = !truth.visibleFaults.some((fault) => UNUSABLE.includes(fault));
  if (isSound) tally.count('usable pulls found', found.length === 1, say(`found ${found.length}`));
  else
    tally.count(
      'faulty pulls found',
      found.length === 1,
      say(`found ${found.length} [${truth.visibleFaults.join()}]`),
    );
  if (pull === undefined) return;
  const codes = pull.reasons.map(({ code }) => code);
  if (isSound) tally.count('usable pulls judged usable', pull.usable, say(codes.join()));
  tally.count(
    'start and end within 0.2 s',
    within(pull.startS, truth.startS, 0.2) && within(pull.endS, truth.endS, 0.2),
    say(`${pull.startS}-${pull.endS} for ${truth.startS}-${truth.endS}`),
  );
  tally.count(
    'gear right',
    pull.gear === truth.gear,
    say(`${pull.gear} for ${truth.gear} [${truth.visibleFaults.join()}]`),
  );
  for (const fault of truth.visibleFaults) {
    tally.count(`fault flagged: ${fault}`, codes.includes(fault), say(codes.join()));
    tally.count('faults flagged, all kinds', codes.includes(fault), say(`${fault}: ${codes.join()}`));
  }
  scoreFigures(drive, truth, pull, tally);
}

function scoreFigures(
  { seed, rateHz, style }: RecordedDrive,
  truth: TruePull,
  pull: LogPull,
  tally: Tally,
): void {
  const say = (text: string): { seed: number; text: string } => ({
    seed,
    text: `${rateHz} Hz ${style.name} ${truth.startS.toFixed(1)} s: ${text}`,
  });
  const { filtered } = truth;
  const isPeakRight = within(pull.peakKpa, filtered.peakKpa, 0.01 * filtered.peakKpa);
  const isFlagged = !pull.usable || pull.reasons.some(({ code }) => code === 'peak-uncertain');
  const peakText = `${pull.peakKpa} for ${filtered.peakKpa.toFixed(2)} (with ripple ${truth.peakKpa.toFixed(2)}), u ${pull.uncertainty.peakKpa}`;
  tally.count('peak within 1 %, or flagged', isPeakRight || isFlagged, say(peakText));
  if (!pull.usable) return;
  tally.count('usable: not flagged as uncertain', !isFlagged, say(peakText));
  tally.count('usable: peak within 1 %', isPeakRight, say(peakText));
  const isCovered = Math.abs((pull.peakKpa ?? 0) - filtered.peakKpa) <= 2 * (pull.uncertainty.peakKpa ?? 0);
  tally.count('usable: true peak within two standard uncertainties', isCovered, say(peakText));
  tally.count(
    'usable: within 1 % of the true peak with ripple',
    within(pull.peakKpa, truth.peakKpa, 0.01 * truth.peakKpa),
    say(peakText),
  );
  if (rateHz < FAST_HZ) return;
  const settledText = `settled ${pull.settledKpa} for ${filtered.settledKpa.toFixed(2)}`;
  if (filtered.overshootPct !== null) {
    tally.count(
      'usable, 50 Hz and more: overshoot within 2 points',
      within(pull.overshootPct, filtered.overshootPct, 2),
      say(`${pull.overshootPct} for ${filtered.overshootPct.toFixed(2)}; ${settledText}`),
    );
  }
  if (filtered.riseTimeS === null) return;
  tally.count(
    'usable, 50 Hz and more: rise time within 10 %',
    within(pull.riseTimeS, filtered.riseTimeS, 0.1 * filtered.riseTimeS),
    say(`${pull.riseTimeS} for ${filtered.riseTimeS.toFixed(3)}; ${settledText}`),
  );
}

function within(value: number | null, truth: number, distance: number): boolean {
  return value !== null && Math.abs(value - truth) <= distance;
}

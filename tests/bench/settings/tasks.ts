import { measureDrift, type DriftRow } from './measure-drift.js';
import { measureForecast, type ForecastRow } from './measure-forecast.js';
import { measureGateHold, type HoldRow } from './measure-gate-hold.js';
import { measureHunting, type HuntingRow } from './measure-hunting.js';
import { measureProof, type ProofRow } from './measure-proof.js';

/** What each part of the bench measures on one seed. */
export const TASKS = {
  'gate-hold': (seed: number): HoldRow => measureGateHold(seed),
  forecast: (seed: number): ForecastRow => measureForecast(seed),
  hunting: (seed: number): HuntingRow => measureHunting(seed),
  'proof-own': (seed: number): ProofRow => measureProof(seed, null),
  'proof-pooled': (seed: number): ProofRow => measureProof(seed, 0.015),
  'drift-assumed': (seed: number): DriftRow => measureDrift(seed, false),
  'drift-known': (seed: number): DriftRow => measureDrift(seed, true),
} as const;

export type TaskName = keyof typeof TASKS;
/** The rows of every part, in the order of the seeds. */
export type TaskRows = { [Name in TaskName]: ReturnType<(typeof TASKS)[Name]>[] };

/** A run of seeds of one part, as a thread is told it. */
export interface Piece {
  readonly task: TaskName;
  readonly from: number;
  /** The last seed, included. */
  readonly to: number;
}

import { describe, expect, it } from 'vitest';
import { measureDrift, scoreDrift } from './measure-drift.js';
import { measureGateHold, scoreGateHold } from './measure-gate-hold.js';
import { measureHunting, scoreHunting } from './measure-hunting.js';
import { measureProof, scoreProof } from './measure-proof.js';

/** Development seeds: what fails here is looked into, which the judgement seeds must be spared. */
const FIRST_SEED = 2001;
const seeds = (count: number): number[] => Array.from({ length: count }, (_, index) => FIRST_SEED + index);

// Generous bounds, since these are few: `npm run bench:settings` measures, this only catches what breaks.
describe('the settings bench in its quick form', () => {
  it('reads hunting off 50 Hz logs', () => {
    const score = scoreHunting(seeds(30).map(measureHunting));
    expect(score.frequencyHeld).toBeGreaterThanOrEqual(26);
    expect(score.dampingHeld).toBeGreaterThanOrEqual(28);
  }, 120_000);
  it('finds drift soon', () => {
    const score = scoreDrift(seeds(60).map((seed) => measureDrift(seed, true)));
    expect(score.medianPulls).toBeLessThanOrEqual(4);
    expect(score.pullsPerFalseAlarm).toBeGreaterThan(200);
  }, 120_000);
  it('calls few presets proven that are not', () => {
    const score = scoreProof(seeds(40).map((seed) => measureProof(seed, null)));
    expect(score.wrong).toBeLessThanOrEqual(4);
    expect(score.proven).toBeGreaterThan(3);
  }, 120_000);
  it('finds the gate hold of physical cars', () => {
    const score = scoreGateHold(seeds(4).map(measureGateHold));
    expect(score.found).toBeGreaterThanOrEqual(3);
    expect(score.tooHigh).toBeLessThanOrEqual(1);
  }, 120_000);
});

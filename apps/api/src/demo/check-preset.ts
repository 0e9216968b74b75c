import { PullNew, type SettingRange } from '@pullbook/contracts';
import type { ShapeDrive } from '@pullbook/practice-car';
import type { Actor } from '../plumbing/actor.js';
import { getPreset } from '../presets/get-preset.js';
import { recordPull } from '../pulls/record-pull.js';
import type { DemoClock } from './demo-clock.js';
import type { DemoCheck } from './demo-scene.js';
import { betweenPullsS } from './drive-preset.js';

/** A preset of the scenario whose stored settings are checked. */
export interface PresetCheck {
  readonly sessionId: string;
  readonly presetId: string;
  readonly range: SettingRange;
  readonly drive: ShapeDrive;
  readonly clock: DemoClock;
  readonly check: DemoCheck;
  readonly airC: number;
}

const STEP_PCT = 10;
/** How the weather and a short gear move the peaks of the scenario: common practice, no source. */
const PEAK_PER_KELVIN = -0.001;
const PEAK_PER_GEAR = 0.02;
const USUAL = { airC: 15, gear: 4 };
/** From this pull on the car has been driven hard long enough. */
const SOAKED_FROM = 3;

/** Climbs to the stored duty in careful steps and pulls there once in each of the check's gears. */
export async function checkPreset(tuner: Actor, plan: PresetCheck): Promise<void> {
  const { dutyPct } = await getPreset(tuner, plan.presetId);
  if (dutyPct === null) throw new Error('the scene checks a preset that has no duty yet');
  for (let duty = plan.range.min + STEP_PCT; duty < dutyPct; duty += STEP_PCT) {
    await pullOnce(tuner, plan, { dutyPct: duty, gear: USUAL.gear, heatSoaked: false });
  }
  for (const [made, gear] of plan.check.gears.entries()) {
    await pullOnce(tuner, plan, { dutyPct, gear, heatSoaked: made + 1 >= SOAKED_FROM });
  }
}

async function pullOnce(
  tuner: Actor,
  { sessionId, presetId, drive, clock, check, airC }: PresetCheck,
  set: { dutyPct: number; gear: number; heatSoaked: boolean },
): Promise<void> {
  const byWeather = 1 + PEAK_PER_KELVIN * (airC - USUAL.airC) + PEAK_PER_GEAR * (set.gear - USUAL.gear);
  const madeKpa = drive.pull(set.dutyPct).peakKpa * check.peakRatio * byWeather;
  clock.pass(betweenPullsS);
  const peakKpa = Math.round(madeKpa * 10) / 10;
  await recordPull(tuner, sessionId, PullNew.parse({ presetId, peakKpa, ...set }));
}

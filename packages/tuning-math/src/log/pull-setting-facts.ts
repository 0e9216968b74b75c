import type { PullSettings } from './pull-settings.js';

export type PullSettingGroup = 'finding' | 'filter' | 'figures' | 'verdict';

/** What a person must know of a setting before changing it. */
export interface PullSettingFacts {
  readonly group: PullSettingGroup;
  readonly label: string;
  /** What it does, and what changing it does. */
  readonly meaning: string;
  /** As people write it; '' for a count. */
  readonly unit: string;
  readonly lowest: number;
  readonly highest: number;
  readonly isWhole: boolean;
}

type NumberSetting = Exclude<keyof PullSettings, 'trustedGears'>;

const facts = (
  group: PullSettingGroup,
  [label, meaning]: readonly [string, string],
  [lowest, highest, unit]: readonly [number, number, string],
  isWhole = false,
): PullSettingFacts => ({ group, label, meaning, unit, lowest, highest, isWhole });

/**
 * Meaning and range of each setting that is a number; `trustedGears` is a list of gears.
 * The ranges keep the figures what their names say; common practice, no source.
 */
export const PULL_SETTING_FACTS: Readonly<Record<NumberSetting, PullSettingFacts>> = {
  fullThrottlePct: facts(
    'finding',
    [
      'Full load from',
      'Share of the highest lasting throttle that counts as full load. Lower takes part load for a pull.',
    ],
    [70, 99, '%'],
  ),
  liftS: facts(
    'finding',
    ['A lift ends a pull after', 'A shorter lift stays inside the pull and makes it “lifted”.'],
    [0.2, 3, 's'],
  ),
  leastStretchS: facts(
    'finding',
    ['Shortest stretch looked at', 'Full load for less time is no pull at all, not even a short one.'],
    [0.1, 2, 's'],
  ),
  leastRiseRpm: facts(
    'finding',
    ['Engine speed must rise by', 'A stretch in which it rises by less is no pull at all.'],
    [50, 1000, 'r/min'],
  ),
  leastBoostKpa: facts(
    'finding',
    ['Boost must reach', 'A stretch of full load that stays below is no pull at all.'],
    [5, 100, 'kPa'],
  ),
  shiftDropPct: facts(
    'finding',
    [
      'A change of gear drops engine speed by',
      'Such a fall parts a pull in two; a smaller one is wheel slip.',
    ],
    [8, 35, '%'],
  ),
  shiftS: facts('finding', ['… within', 'Longest time that a change of gear takes.'], [0.2, 2, 's']),
  hampelHalfWindowS: facts(
    'filter',
    [
      'Spikes are looked for over ±',
      'A sample far from the median of so long before and after it is replaced.',
    ],
    [0.02, 0.5, 's'],
  ),
  hampelThreshold: facts(
    'filter',
    [
      'A spike is further off than',
      'In scaled median absolute deviations. Lower replaces more, and clips sharp peaks.',
    ],
    [3, 10, ''],
  ),
  smoothWindowS: facts(
    'filter',
    ['The smoothing parabola spans', 'Wider takes more noise away and flattens short overshoot.'],
    [0.05, 1, 's'],
  ),
  smoothLeastSamples: facts(
    'filter',
    ['… and at least so many samples', 'In slow logs the window grows until it holds so many.'],
    [4, 15, ''],
    true,
  ),
  settledBandPct: facts(
    'figures',
    ['Settled means within', 'Distance from the straight line through the later part of the pull.'],
    [0.5, 10, '%'],
  ),
  settledWindowS: facts(
    'figures',
    ['Settled boost is the mean over', 'From the moment it has settled, as far as the pull lasts.'],
    [0.3, 5, 's'],
  ),
  riseLowPct: facts(
    'figures',
    ['Rise time from', 'Share of settled boost where the rise begins. IEEE 181: 10 %.'],
    [5, 40, '%'],
  ),
  riseHighPct: facts(
    'figures',
    ['Rise time to', 'Share of settled boost where the rise ends. IEEE 181: 90 %.'],
    [60, 95, '%'],
  ),
  onsetPct: facts(
    'figures',
    ['Onset speed at', 'Share of the target that must be reached; without a target, of settled boost.'],
    [50, 100, '%'],
  ),
  leastDurationS: facts(
    'verdict',
    ['A pull lasts at least', 'A shorter one is “short” and not usable.'],
    [0.5, 10, 's'],
  ),
  leastSpanRpm: facts(
    'verdict',
    ['A pull covers at least', 'One over a narrower range of engine speed is “short” and not usable.'],
    [300, 6000, 'r/min'],
  ),
  leastRiseSamples: facts(
    'verdict',
    [
      'Samples in the rise, at least',
      'With fewer between the two ends of the rise, the log is too slow to show the peak.',
    ],
    [3, 20, ''],
    true,
  ),
  leastBoostRateHz: facts(
    'verdict',
    ['Samples of boost a second, at least', 'A slower log cannot show the peak.'],
    [2, 50, 'Hz'],
  ),
  slipPct: facts(
    'verdict',
    ['Slipped from', 'Wheel or clutch slip from which a pull is not usable.'],
    [2, 15, '%'],
  ),
  leanLambda: facts(
    'verdict',
    ['Lean above lambda', 'Full load above it is reported as lean.'],
    [0.7, 1, ''],
  ),
  knockRetardDeg: facts(
    'verdict',
    ['Knock from a retard of', 'Ignition taken back by so much, either way, is reported as knock.'],
    [0.2, 5, '°'],
  ),
};

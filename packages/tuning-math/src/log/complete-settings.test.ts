import { describe, expect, it } from 'vitest';
import { completeSettings } from './complete-settings.js';
import { PULL_SETTING_FACTS } from './pull-setting-facts.js';
import { DEFAULT_PULL_SETTINGS, type PullSettings } from './pull-settings.js';

describe('completeSettings', () => {
  it('gives the default settings, and takes changes', () => {
    expect(completeSettings()).toEqual(DEFAULT_PULL_SETTINGS);
    expect(completeSettings({ slipPct: 7 })).toEqual({ ...DEFAULT_PULL_SETTINGS, slipPct: 7 });
  });

  it('tells facts of every setting, with its default inside the range', () => {
    const told = [...Object.keys(PULL_SETTING_FACTS), 'trustedGears'].sort();
    expect(told).toEqual(Object.keys(DEFAULT_PULL_SETTINGS).sort());
    for (const [name, { lowest, highest }] of Object.entries(PULL_SETTING_FACTS)) {
      const value = DEFAULT_PULL_SETTINGS[name as keyof PullSettings] as number;
      expect([name, value >= lowest && value <= highest]).toEqual([name, true]);
    }
  });

  it.each([
    ['slipPct', 1.9],
    ['slipPct', 15.1],
    ['slipPct', NaN],
    ['smoothLeastSamples', 5.5],
    ['leanLambda', Infinity],
    ['trustedGears', []],
    ['trustedGears', [3, 11]],
    ['riseLowPct', 41],
  ])('refuses %s of %s by name', (name, value) => {
    expect(() => completeSettings({ [name]: value })).toThrow(`the setting ${name} cannot be`);
  });
});

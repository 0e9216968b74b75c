import { describe, expect, it } from 'vitest';
import { derivePresetState, type PresetFacts } from './preset-state.js';

const proven: PresetFacts = {
  isReplaced: false,
  revision: 4,
  signedOffRevision: null,
  hasController: true,
  targetKpa: 140,
  ceilingKpa: 155,
  dutyPct: 46,
  pullCount: 7,
  acceptedDutyPct: 46,
};

describe('derivePresetState', () => {
  it.each([
    ['draft without a target', { targetKpa: null }, 'draft', 'no target is agreed'],
    ['draft without a ceiling', { ceilingKpa: null }, 'draft', 'no ceiling is agreed'],
    ['draft without a controller', { hasController: false }, 'draft', 'controller is not described'],
    ['draft without a pull', { pullCount: 0 }, 'draft', 'no pull is on record'],
    ['on test until the advice accepts', { acceptedDutyPct: null }, 'on-test', 'has not accepted'],
    ['on test until the accepted duty is stored', { dutyPct: null }, 'on-test', '(46 %) is not stored'],
    [
      'on test while another duty is stored',
      { dutyPct: 45 },
      'on-test',
      '(45 %) is not the accepted one (46 %)',
    ],
    ['proven once the accepted duty is stored', {}, 'proven', 'not signed off'],
    [
      'proven again after a change to a signed-off revision',
      { signedOffRevision: 3 },
      'proven',
      'not signed off',
    ],
  ] as const)('is %s', (_what, change, state, missing) => {
    const standing = derivePresetState({ ...proven, ...change });
    expect(standing.state).toBe(state);
    expect(standing.missing.join('; ')).toContain(missing);
  });

  it('is signed off for exactly the sealed revision, with nothing missing', () => {
    expect(derivePresetState({ ...proven, signedOffRevision: 4 })).toEqual({
      state: 'signed-off',
      missing: [],
    });
  });

  it('is replaced before anything else', () => {
    expect(derivePresetState({ ...proven, isReplaced: true, signedOffRevision: 4 }).state).toBe('replaced');
  });
});

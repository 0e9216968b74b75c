import type { PresetState } from '@pullbook/contracts';

/** How far a preset is, as people say it. */
export const presetStateNames: Readonly<Record<PresetState, string>> = {
  draft: 'draft',
  'on-test': 'on test',
  proven: 'proven',
  'signed-off': 'signed off',
  replaced: 'replaced',
};

/** The same told by shape: filling up towards signed off. */
export const presetStateShapes: Readonly<Record<PresetState, string>> = {
  draft: '○',
  'on-test': '◐',
  proven: '●',
  'signed-off': '✓',
  replaced: '–',
};

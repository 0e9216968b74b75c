import type { PresetRevision } from '@pullbook/contracts';

/** The settings of one preset revision, without who made it and when. */
export type PresetValues = Omit<PresetRevision, 'revision' | 'reason' | 'madeBy' | 'madeAt'>;

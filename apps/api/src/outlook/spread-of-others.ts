import type { RelativeSpread } from '@pullbook/tuning-math';
import { earlierSpreads } from '../presets/earlier-spreads.js';
import type { HistoryRow } from './read-pulls.js';

/**
 * How far the preset's other pulls scattered, setting by setting and visit by visit. Those that are watched for drift
 * stay out: a jump among them would widen the limits that are to find it.
 */
export function spreadOfOthers(rows: readonly HistoryRow[], watchedIds: ReadonlySet<string>): RelativeSpread {
  const spreads = earlierSpreads(
    rows.filter(({ id }) => !watchedIds.has(id)),
    undefined,
  );
  return {
    squares: spreads.reduce((sum, { squares }) => sum + squares, 0),
    degreesOfFreedom: spreads.reduce((sum, { degreesOfFreedom }) => sum + degreesOfFreedom, 0),
  };
}

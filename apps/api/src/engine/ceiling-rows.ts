import type { CeilingCause, CeilingRow } from '@pullbook/contracts';
import { computedLimits, type BuiltCeiling, type CeilingCar, type CountedLimit } from './ceiling-of-car.js';
import type { ComputedLimit } from './computed-limits.js';
import { causeOfLimit, limitNames } from './limit-names.js';

const whyCounted: Partial<Record<CeilingCause, string>> = {
  'over-boost-cut': 'as entered, less a margin so that scatter does not set it off',
  'sensor-full-scale': 'as entered, less a margin so that a peak past the ceiling is still seen',
};

/** All limits that a ceiling may follow from, lowest first, those that are not known at the end. */
export function ceilingRows(car: CeilingCar, ceiling: BuiltCeiling | null): CeilingRow[] {
  const { injectors, map } = computedLimits(car);
  const rows = [
    ...Object.values(causeOfLimit).map((cause) => enteredRow(cause, ceiling)),
    computedRow('injectors', injectors, ceiling),
    computedRow('compressor-map', map, ceiling),
  ];
  return rows.sort((a, b) => (a.limitKpa ?? Infinity) - (b.limitKpa ?? Infinity));
}

function enteredRow(cause: CeilingCause, ceiling: BuiltCeiling | null): CeilingRow {
  const counted = ceiling?.counted.find((limit) => limit.cause === cause);
  if (counted !== undefined) return countedRow(counted, ceiling, whyCounted[cause] ?? 'as entered');
  return {
    ...noLimit(cause),
    why: 'not known: enter it with the limits of the car',
    open: [limitNames[cause]],
  };
}

function computedRow(cause: CeilingCause, limit: ComputedLimit, ceiling: BuiltCeiling | null): CeilingRow {
  const counted = ceiling?.counted.find((one) => one.cause === cause);
  if (counted !== undefined) return countedRow(counted, ceiling, limit.why);
  const { kpa, why } = limit;
  const open = [...limit.open];
  if (kpa === null) return { ...noLimit(cause), why, open };
  const headroomKpa = ceiling === null ? null : kpa - ceiling.ceilingKpa;
  return { ...noLimit(cause), state: 'estimate', statedKpa: kpa, limitKpa: kpa, headroomKpa, why, open };
}

function countedRow(counted: CountedLimit, ceiling: BuiltCeiling | null, why: string): CeilingRow {
  const state = ceiling?.binds.cause === counted.cause ? 'binding' : 'counts';
  return { ...counted, state, why, open: [] };
}

function noLimit(cause: CeilingCause): Omit<CeilingRow, 'why' | 'open'> {
  const nothing = { statedKpa: null, marginKpa: 0, limitKpa: null, headroomKpa: null };
  return { cause, name: limitNames[cause], ...nothing, state: 'unknown' };
}

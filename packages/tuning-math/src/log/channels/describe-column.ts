import type { LogChannel, RecognitionBasis } from '../log-samples.js';
import type { ColumnFacts } from './column-facts.js';
import type { ColumnClaim } from './recognise-columns.js';

/** What was settled about a column beside its claim. */
export interface SettledFacts {
  readonly unit: string;
  readonly certain: boolean;
  readonly reference?: 'gauge' | 'absolute' | null;
  readonly rowCount: number;
}

/** A column as it is shown to the person who drops the file; the log puts in what stands in its first cells. */
export function describeColumn(claim: ColumnClaim, facts: ColumnFacts, settled: SettledFacts): LogChannel {
  return {
    header: claim.header,
    quantity: claim.quantity,
    unit: settled.unit,
    reference: settled.reference ?? null,
    column: claim.column,
    occurrence: claim.occurrence,
    samples: [],
    basis: basisOf(claim),
    certain: settled.certain,
    sampleCount: facts.sampleCount,
    missingCount: settled.rowCount - facts.sampleCount,
    lowest: Number.isFinite(facts.lowest) ? facts.lowest : null,
    highest: Number.isFinite(facts.highest) ? facts.highest : null,
  };
}

function basisOf(claim: ColumnClaim): RecognitionBasis {
  if (claim.byRecipe) return 'recipe';
  if (claim.quantity === 'unknown') return 'none';
  return claim.unit === null ? 'name-and-values' : 'name-and-unit';
}

import type { LogLayout } from '../log-samples.js';
import type { TableLayout } from '../reading/detect-layout.js';
import type { NumberColumns } from '../reading/number-columns.js';
import type { ScanCounts } from '../reading/scan-layout.js';
import type { ColumnClaim } from './recognise-columns.js';

/** A log whose rows have all been scanned. */
export interface ScannedLog {
  readonly layout: TableLayout;
  readonly encoding: LogLayout['encoding'];
  readonly claims: readonly ColumnClaim[];
  readonly places: Int32Array;
  readonly columns: NumberColumns;
  readonly counts: ScanCounts;
}

/** known: the pulls tell; beyond: they tell, but not this far out; unknown: they do not tell. */
export type GridCellStatus = 'known' | 'beyond' | 'unknown';

/** A forecast for one pair of conditions, kPa gauge. */
export interface GridCell {
  readonly status: GridCellStatus;
  readonly medianKpa: number;
  readonly lowKpa: number;
  readonly highKpa: number;
  /** Chance that a pull passes the ceiling, 0 to 1. */
  readonly probabilityOverCeiling: number;
}

/** All that a grid of forecasts shows. */
export interface GridFigures {
  /** 'Intake air °C', 'Gear': names with their unit. */
  readonly rowsName: string;
  readonly columnsName: string;
  readonly columns: readonly string[];
  readonly rows: readonly { readonly label: string; readonly cells: readonly GridCell[] }[];
  readonly ceilingKpa: number;
  /** Chance of passing the ceiling above which a cell is marked, 0 to 1. */
  readonly riskLimit: number;
}

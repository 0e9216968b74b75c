import type { OutlookCell, OutlookGrid } from '@pullbook/contracts';
import {
  forecastGrid,
  standardAtmosphere,
  type ConditionsModel,
  type KnownConditions,
  type PeakForecast,
} from '@pullbook/tuning-math';

const INTAKES_C = [-10, 0, 10, 20, 30, 40];
const HEIGHTS_M = [0, 500, 1000, 1500, 2000, 2500];
const GRADIENTS_PCT = [-6, -3, 0, 3, 6, 9];
const GEARS_AROUND = [-2, -1, 0, 1, 2];
const GEARS = { lowest: 1, highest: 8 };

/**
 * What a preset will peak at over intake air and gear, height and gradient; all other conditions as at the model's
 * reference. Heights count by the barometer of the standard atmosphere (ISO 2533).
 */
export function forecastGrids(model: ConditionsModel, ceilingKpa: number, level: number): OutlookGrid[] {
  const grid = (
    by: OutlookGrid['by'],
    field: keyof KnownConditions,
    columns: OutlookGrid['columns'],
    values: readonly number[],
  ): OutlookGrid => {
    const rows = { field: 'intakeC', values: INTAKES_C } as const;
    const cells = forecastGrid(model, { rows, columns: { field, values }, ceilingKpa, level });
    return {
      by,
      columns,
      rows: cells.map((row, index) => ({ intakeC: INTAKES_C[index] ?? 0, cells: row.map(presentCell) })),
    };
  };
  const gears = GEARS_AROUND.map((more) => model.reference.gear + more).filter(
    (gear) => gear >= GEARS.lowest && gear <= GEARS.highest,
  );
  const barometers = HEIGHTS_M.map((heightM) => standardAtmosphere(heightM).pressureAbsKpa);
  const plain = (values: readonly number[]): OutlookGrid['columns'] =>
    values.map((value) => ({ value, barometerAbsKpa: null }));
  const heights = HEIGHTS_M.map((value, index) => ({ value, barometerAbsKpa: barometers[index] ?? null }));
  return [
    grid('gear', 'gear', plain(gears), gears),
    grid('height', 'barometerAbsKpa', heights, barometers),
    grid('gradient', 'gradientPct', plain(GRADIENTS_PCT), GRADIENTS_PCT),
  ];
}

function presentCell(forecast: PeakForecast): OutlookCell {
  const { medianKpa, lowKpa, highKpa, probabilityOverCeiling, unknown, outside } = forecast;
  return {
    ...{ medianKpa, lowKpa, highKpa, probabilityOverCeiling },
    status: unknown.length > 0 ? 'unknown' : outside.length > 0 ? 'beyond' : 'known',
    unknown: [...unknown],
    outside: [...outside],
  };
}

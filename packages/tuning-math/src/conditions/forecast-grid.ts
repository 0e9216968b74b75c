import type { ConditionsModel, KnownConditions } from './conditions-types.js';
import { forecastPeak, type ForecastOptions, type PeakForecast } from './forecast-peak.js';

/** One side of a grid of forecasts: a condition and the values that it takes. */
export interface ForecastAxis {
  readonly field: keyof KnownConditions;
  readonly values: readonly number[];
}

/** Which grid is wanted. */
export interface ForecastGridRequest extends ForecastOptions {
  readonly rows: ForecastAxis;
  readonly columns: ForecastAxis;
}

/**
 * What a preset will peak at over two conditions, all others as at the model's reference.
 *
 * @param model from `fitConditions`
 * @returns one row of forecasts for each value of `rows`, in the order of `columns`
 * @throws NotFiniteError, OutOfRangeError
 * Cost: rows × columns forecasts. Source: `forecastPeak`.
 */
export function forecastGrid(
  model: ConditionsModel,
  { rows, columns, ...options }: ForecastGridRequest,
): PeakForecast[][] {
  return rows.values.map((row) =>
    columns.values.map((column) =>
      forecastPeak(model, { ...model.reference, [rows.field]: row, [columns.field]: column }, options),
    ),
  );
}

export type {
  Condition,
  ConditionedPull,
  ConditionEffect,
  ConditionsModel,
  EffectStatus,
  KnownConditions,
  PullConditions,
} from './conditions-types.js';
export { fitConditions } from './fit-conditions.js';
export { forecastGrid, type ForecastAxis, type ForecastGridRequest } from './forecast-grid.js';
export { forecastPeak, type ForecastOptions, type PeakForecast } from './forecast-peak.js';
export { peaksAtReference, type ReferencePeak } from './peaks-at-reference.js';
export { shiftByConditions, type ConditionShift, type UncorrectedChange } from './shift-by-conditions.js';
export { usualConditions } from './usual-conditions.js';

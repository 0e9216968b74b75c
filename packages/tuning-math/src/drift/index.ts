export { ewmaChart, type ChartPoint, type EwmaOptions } from './ewma-chart.js';
export { findDrift, type Drift, type DriftRequest, type DriftRule } from './find-drift.js';
export { followDrift, type FollowedDrift, type FollowedVisit, type RelativeSpread } from './follow-drift.js';
export { individualsChart, type IndividualsChart } from './individuals-chart.js';
export { runRules, type RunAlarm, type RunRule } from './run-rules.js';

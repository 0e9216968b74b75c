export type * from './physical-car.js';
export { drawCar } from './draw-car.js';
export { PULL_DEFAULTS, type PullOptions, type PullPlan } from './pull-plan.js';
export { runPull, type PullResult } from './run-pull.js';
export { measurePull, type PullTruth } from './measure-pull.js';
export { varyPull, PULL_SCATTER } from './vary-pull.js';
export { quickPeak, type QuickPeak } from './quick-peak.js';
export { tuneOracle, type OracleAnswer } from './tune-oracle.js';
export { TRACE_COLUMNS, type Trace, type TraceColumn } from './trace.js';

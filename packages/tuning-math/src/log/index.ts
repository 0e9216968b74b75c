export { CHANNEL_QUANTITIES, type ChannelQuantity } from './channel-quantities.js';
export type { ChannelRecipe, RecipeColumn } from './channel-recipe.js';
export type {
  Hunting,
  LogAnalysis,
  LogNotice,
  LogProvenance,
  LogPull,
  PullUncertainty,
} from './log-analysis.js';
export { LogError, type LogErrorCode } from './log-error.js';
export type { LogOptions } from './log-options.js';
export type { LogChannel, LogLayout, LogSamples, RecognitionBasis } from './log-samples.js';
export { DEFAULT_PULL_SETTINGS, type PullSettings } from './pull-settings.js';
export type { PullTrace } from './pull-trace.js';
export { analyseLog } from './analyse-log.js';
export { analyseSamples, LOG_CODE_VERSION } from './analyse-samples.js';
export { readLog } from './read-log.js';
export { createLogReader, type LogReader } from './reading/create-log-reader.js';
export { traceOfLog, type TraceOptions } from './traces/trace-of-log.js';
export { traceOfPull, type PullTraceOptions } from './traces/trace-of-pull.js';

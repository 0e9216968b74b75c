export { LOG_CHANNELS, type LogChannel } from './log-channel.js';
export { LOG_STYLES, type LogStyle, type StyleColumn, type TimeForm, type WrittenUnit } from './log-style.js';
export { drawLogger, perfectLogger } from './draw-logger.js';
export type { Logger, Sensor } from './sensor.js';
export {
  channelsOfStyle,
  recordLog,
  type LoggedPullTruth,
  type LogOptions,
  type RecordedLog,
} from './record-log.js';

export { baseUnitOf } from './base-unit-of.js';
export { buildMinMaxLevels, type MinMaxLevel } from './build-min-max-levels.js';
export { CHANNEL_BASE_UNITS, channelUnit, type ChannelBaseUnit, type ChannelUnit } from './channel-unit.js';
export { filteredBoost } from './filtered-boost.js';
export { LEVEL_FACTOR, levelShapes, TILE_BINS, type LevelShape } from './level-shapes.js';
export { pickLevel } from './pick-level.js';
export { writeSingle } from './write-single.js';

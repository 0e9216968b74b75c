export { airMassFlow, type EngineBreathing } from './air-mass-flow.js';
export { boostAtInjectorLimit, type InjectorLimit } from './boost-at-injector-limit.js';
export { boostAtInjectorDuty, type InjectorDutyLimit } from './boost-at-injector-duty.js';
export { boostAtMapLimit, type MapLimit } from './boost-at-map-limit.js';
export {
  buildCeiling,
  DEFAULT_CEILING_MARGINS,
  type Ceiling,
  type CeilingCause,
  type CeilingLimit,
  type CeilingLimits,
  type CeilingMargins,
} from './build-ceiling.js';
export { ceilingMargins } from './ceiling-margins.js';
export { chargeDensityRatio, type ChargeState } from './charge-density-ratio.js';
export { chargePath, type ChargePath, type ChargePathInputs } from './charge-path.js';
export { chargeTemperature, type ChargeCooler } from './charge-temperature.js';
export type { CompressorMap, SpeedLine } from './compressor-map.js';
export { compressorOutletTemperature, type CompressorPoint } from './compressor-outlet-temperature.js';
export { compressorPressureRatio, type IntakePressures } from './compressor-pressure-ratio.js';
export {
  correctedFlow,
  correctedShaftSpeed,
  MAP_REFERENCES,
  type CompressorInlet,
  type MapReference,
} from './corrected-flow.js';
export { fuelMassFlow } from './fuel-mass-flow.js';
export { injectorDuty, type InjectorLoad } from './injector-duty.js';
export { leastOverBoostCut } from './least-over-boost-cut.js';
export {
  locateOnCompressorMap,
  type MapLocation,
  type MapPlace,
  type MapPoint,
} from './locate-on-compressor-map.js';
export { powerBand, type PowerBand, type PowerInputs, type Uncertain } from './power-band.js';
export { findMapFaults } from './find-map-faults.js';
export { readCompressorMap, type MapFileOptions } from './read-compressor-map.js';
export { torqueAtPower } from './torque-at-power.js';

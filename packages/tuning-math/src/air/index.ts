export { barometerAtAltitude, type PlaceAir } from './barometer-at-altitude.js';
export {
  dieselPowerCorrection,
  type DieselCharging,
  type DieselCorrection,
  type DieselEngine,
  type DieselStandard,
} from './diesel-power-correction.js';
export { dryAirPressure, type AirReading } from './dry-air-pressure.js';
export { expectedIdleVacuum, type IdleVacuumHint } from './expected-idle-vacuum.js';
export { moistAirDensity, type MoistAirDensity } from './moist-air-density.js';
export {
  powerCorrection,
  type CorrectionAir,
  type CorrectionStandard,
  type PowerCorrection,
} from './power-correction.js';
export {
  geopotentialAltitude,
  STANDARD_PRESSURE_ABS_KPA,
  standardAtmosphere,
  type StandardAir,
} from './standard-atmosphere.js';
export { vapourPressure, type VapourFormula } from './vapour-pressure.js';

export { grubbsTest, type GrubbsOptions, type GrubbsResult } from './grubbs-test.js';
export { predictionInterval, type PredictionInterval } from './prediction-interval.js';
export { repeatability, type Repeatability } from './repeatability.js';
export { toleranceFactor, type ToleranceDemand } from './tolerance-factor.js';
export {
  toleranceInterval,
  type PooledSpread,
  type ToleranceInterval,
  type ToleranceOptions,
} from './tolerance-interval.js';

export { chiSquareCdf } from './chi-square-cdf.js';
export { chiSquareQuantile } from './chi-square-quantile.js';
export { findRoot, type RootBracket, type RootResult } from './find-root.js';
export { integrate, type IntegralResult, type IntegrationRange } from './integrate.js';
export { isotonicRegression } from './isotonic-regression.js';
export { leastSquares, type LeastSquaresFit } from './least-squares.js';
export { logGamma } from './log-gamma.js';
export { meanAndVariance, type SampleMoments } from './mean-and-variance.js';
export {
  evaluateMonotoneCubic,
  fitMonotoneCubic,
  slopeOfMonotoneCubic,
  type MonotoneCubic,
} from './monotone-cubic.js';
export { noncentralTCdf, type NoncentralT } from './noncentral-t-cdf.js';
export { noncentralTQuantile } from './noncentral-t-quantile.js';
export { normalCdf } from './normal-cdf.js';
export { normalPdf } from './normal-pdf.js';
export { normalQuantile } from './normal-quantile.js';
export { quantileSorted } from './quantile-sorted.js';
export { regularizedBeta, type BetaArguments } from './regularized-beta.js';
export { regularizedGamma, type Tails } from './regularized-gamma.js';
export { savitzkyGolayWeights, type SavitzkyGolayOptions } from './savitzky-golay-weights.js';
export { studentTCdf } from './student-t-cdf.js';
export { studentTQuantile } from './student-t-quantile.js';

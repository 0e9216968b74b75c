import { TooFewPointsError } from '../errors.js';
import { meanAndVariance } from '../numerics/mean-and-variance.js';
import { requireSeries } from '../require-series.js';

/** ISO 5725-6 multiplies by 2.8, the rounded 1.96 · √2. */
const LIMIT_FACTOR = 2.8;

/** Scatter within and between groups of readings, in the words of ISO 5725. */
export interface Repeatability {
  readonly mean: number;
  /** Repeatability standard deviation: readings of one group, s_r. */
  readonly repeatabilitySd: number;
  /** Between groups, s_L; 0 where the groups differ no more than their readings do. */
  readonly betweenSd: number;
  /** Reproducibility standard deviation, s_R. */
  readonly reproducibilitySd: number;
  /** Two readings of one group differ by more than this in 1 of 20 cases only, r. */
  readonly repeatabilityLimit: number;
  /** The same for readings of two groups, R. */
  readonly reproducibilityLimit: number;
  readonly degreesOfFreedomWithin: number;
  readonly degreesOfFreedomBetween: number;
  readonly meanSquareWithin: number;
  readonly meanSquareBetween: number;
}

/**
 * Repeatability and reproducibility of readings in groups: pulls of one preset grouped by visit, say. Groups
 * may differ in size.
 *
 * @param groups at least 2, each of at least 1 finite value, at least one of them of 2 or more
 * @throws TooFewPointsError, NotFiniteError
 * Source: ISO 5725-2:2019 section 7.4 (one-way analysis of variance), ISO 5725-6:1994 section 4 (limits).
 */
export function repeatability(groups: readonly ArrayLike<number>[]): Repeatability {
  checkGroups(groups);
  const moments = groups.map((group) => meanAndVariance(group));
  const total = moments.reduce((sum, { count }) => sum + count, 0);
  const mean = moments.reduce((sum, group) => sum + group.mean * (group.count / total), 0);
  const freedomBetween = groups.length - 1;
  const freedomWithin = total - groups.length;
  const squaresWithin = moments.reduce((sum, { count, variance }) => sum + (count - 1) * (variance ?? 0), 0);
  const squaresBetween = moments.reduce((sum, group) => sum + group.count * (group.mean - mean) ** 2, 0);
  const meanSquareWithin = squaresWithin / freedomWithin;
  const meanSquareBetween = squaresBetween / freedomBetween;
  const sizeSquares = moments.reduce((sum, { count }) => sum + count * count, 0);
  const effectiveSize = (total - sizeSquares / total) / freedomBetween;
  const betweenVariance = Math.max(0, (meanSquareBetween - meanSquareWithin) / effectiveSize);
  const reproducibilitySd = Math.sqrt(meanSquareWithin + betweenVariance);
  const repeatabilitySd = Math.sqrt(meanSquareWithin);
  return {
    mean,
    repeatabilitySd,
    betweenSd: Math.sqrt(betweenVariance),
    reproducibilitySd,
    repeatabilityLimit: LIMIT_FACTOR * repeatabilitySd,
    reproducibilityLimit: LIMIT_FACTOR * reproducibilitySd,
    degreesOfFreedomWithin: freedomWithin,
    degreesOfFreedomBetween: freedomBetween,
    meanSquareWithin,
    meanSquareBetween,
  };
}

function checkGroups(groups: readonly ArrayLike<number>[]): void {
  const fail = (value: string, allowed: string): never => {
    throw new TooFewPointsError('repeatability', { argument: 'groups', value, allowed });
  };
  if (groups.length < 2) fail(`${groups.length} of them`, 'to be at least 2');
  groups.forEach((group, index) => requireSeries('repeatability', `groups[${index}]`, group));
  if (groups.every((group) => group.length < 2)) fail('single readings only', 'to hold one of 2 or more');
}

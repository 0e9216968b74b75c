import type { CoarseFits } from './coarse-fit.js';

/** Weights lighter than the heaviest by more than this (log) cannot be drawn. */
const NEVER_DRAWN_LOG = 30;

/**
 * Weights to draw curves by, which sum to 1: most in proportion to how they fit all pulls, some to how they fit all but
 * the doubted one. Should that reading be a false one, the curves that it speaks against are still among those drawn, and
 * the chance of passing the ceiling beyond it can be told.
 *
 * @param withoutDoubted share of the weight that is given as if the doubted pull had not been made
 * Source: defensive mixture for importance sampling; Hesterberg, Technometrics 37 (1995), 185.
 */
export function defendedWeights(
  { logFits, doubtedLogs }: Pick<CoarseFits, 'logFits' | 'doubtedLogs'>,
  withoutDoubted: number,
): Float64Array {
  const all = sharesOf(logFits, NO_LOGS);
  if (withoutDoubted === 0) return all;
  const allButDoubted = sharesOf(logFits, doubtedLogs);
  for (let row = 0; row < all.length; row += 1)
    all[row] = (1 - withoutDoubted) * (all[row] as number) + withoutDoubted * (allButDoubted[row] as number);
  return all;
}

const NO_LOGS = new Float64Array(0);

/** Shares of 1 by log weights, less what is to be left out of them. */
function sharesOf(logFits: Float64Array, leftOut: Float64Array): Float64Array {
  const logs = leftOut.length === 0 ? logFits : new Float64Array(logFits.length);
  for (let row = 0; row < leftOut.length; row += 1)
    logs[row] = (logFits[row] as number) - (leftOut[row] as number);
  let highest = -Infinity;
  for (let row = 0; row < logs.length; row += 1)
    if ((logs[row] as number) > highest) highest = logs[row] as number;
  const lightest = highest - NEVER_DRAWN_LOG;
  const shares = new Float64Array(logs.length);
  let total = 0;
  for (let row = 0; row < logs.length; row += 1) {
    const log = logs[row] as number;
    if (log < lightest) continue;
    const share = Math.exp(log - highest);
    shares[row] = share;
    total += share;
  }
  for (let row = 0; row < shares.length; row += 1) shares[row] = (shares[row] as number) / total;
  return shares;
}

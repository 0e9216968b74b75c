import { requireNumber } from '../require-number.js';

const LANCZOS_G = 7;
const LANCZOS = [
  0.99999999999980993, 676.5203681218851, -1259.1392167224028, 771.32342877765313, -176.61502916214059,
  12.507343278686905, -0.13857109526572012, 9.9843695780195716e-6, 1.5056327351493116e-7,
];
const HALF_LOG_TWO_PI = 0.9189385332046727;
const STIRLING_FROM = 12;

/**
 * Natural logarithm of the gamma function.
 *
 * @param x above 0
 * @returns ln Γ(x), error about 1e-14 relative to max(1, |ln Γ|)
 * @throws NotFiniteError; OutOfRangeError at 0 or below
 * Source: Lanczos, SIAM J. Numer. Anal. B 1 (1964) 86-96, with g = 7 and nine terms (coefficients from
 * memory, checked against factorials); Stirling's series, DLMF 5.11.1, from 12 up.
 * @example logGamma(5) // 3.1780538303479458, the logarithm of 4! = 24
 */
export function logGamma(x: number): number {
  requireNumber('logGamma', 'x', x, { min: 0, exclusive: true });
  if (x >= STIRLING_FROM) return stirling(x);
  if (x < 0.5) return Math.log(Math.PI / Math.sin(Math.PI * x)) - logGamma(1 - x);
  const shifted = x - 1;
  let sum = LANCZOS[0] ?? 0;
  for (let term = 1; term < LANCZOS.length; term += 1) sum += (LANCZOS[term] ?? 0) / (shifted + term);
  const base = shifted + LANCZOS_G + 0.5;
  return HALF_LOG_TWO_PI + (shifted + 0.5) * Math.log(base) - base + Math.log(sum);
}

/**
 * Natural logarithm of the beta function B(a, b). Unlike the sum of three logarithms of gamma it keeps its
 * precision where one shape is large.
 */
export function logBeta(a: number, b: number): number {
  const [small, large] = a < b ? [a, b] : [b, a];
  if (large < STIRLING_FROM) return logGamma(small) + logGamma(large) - logGamma(small + large);
  // ln Γ(large) - ln Γ(small + large), by Stirling's series with its large terms cancelled on paper.
  const ratio =
    -(large - 0.5) * Math.log1p(small / large) -
    small * Math.log(small + large) +
    small +
    stirlingSeries(large) -
    stirlingSeries(small + large);
  return logGamma(small) + ratio;
}

function stirling(x: number): number {
  return (x - 0.5) * Math.log(x) - x + HALF_LOG_TWO_PI + stirlingSeries(x);
}

function stirlingSeries(x: number): number {
  const square = 1 / (x * x);
  return (1 / 12 - square * (1 / 360 - square * (1 / 1260 - square * (1 / 1680 - square * (1 / 1188))))) / x;
}

import { NotFiniteError } from '../errors.js';

const CENTRE = 0.67448975;
const NEAR_TAIL = Math.sqrt(32);
const INVERSE_ROOT_TWO_PI = 0.3989422804014327;

const CENTRE_NUMERATOR = [
  0.065682337918207449113, 2.2352520354606839287, 161.02823106855587881, 1067.6894854603709582,
  18154.981253343561249,
];
const CENTRE_DENOMINATOR = [
  1, 47.20258190468824187, 976.09855173777669322, 10260.932208618978205, 45507.789335026729956,
];
const NEAR_NUMERATOR = [
  1.0765576773720192317e-8, 0.39894151208813466764, 8.8831497943883759412, 93.506656132177855979,
  597.27027639480026226, 2494.5375852903726711, 6848.1904505362823326, 11602.651437647350124,
  9842.7148383839780218,
];
const NEAR_DENOMINATOR = [
  1, 22.266688044328115691, 235.38790178262499861, 1519.377599407554805, 6485.558298266760755,
  18615.571640885098091, 34900.952721145977266, 38912.003286093271411, 19685.429676859990727,
];
const FAR_NUMERATOR = [
  0.02307344176494017303, 0.21589853405795699, 0.1274011611602473639, 0.022235277870649807,
  0.001421619193227893466, 2.9112874951168792e-5,
];
const FAR_DENOMINATOR = [
  1, 1.28426009614491121, 0.468238212480865118, 0.0659881378689285515, 0.00378239633202758244,
  7.29751555083966205e-5,
];

/**
 * Probability that a standard normal variable is at most z. Full double precision, also relative in the
 * lower tail; for the upper tail ask for normalCdf(-z).
 *
 * @param z any number; minus and plus infinity give 0 and 1
 * @returns probability, 0 to 1
 * @throws NotFiniteError for NaN
 * Source: W. J. Cody, "Rational Chebyshev approximations for the error function", Math. Comp. 23 (1969)
 * 631-637; coefficients from memory, checked against an independent library over the whole range.
 * @example normalCdf(1.959963984540054) // 0.975
 */
export function normalCdf(z: number): number {
  if (Number.isNaN(z)) {
    throw new NotFiniteError('normalCdf', { argument: 'z', value: z, allowed: 'to be a number' });
  }
  const distance = Math.abs(z);
  if (distance <= CENTRE) {
    const square = distance > 1.11e-16 ? z * z : 0;
    return 0.5 + z * (polynomial(CENTRE_NUMERATOR, square) / polynomial(CENTRE_DENOMINATOR, square));
  }
  const tail = upperTail(distance);
  return z > 0 ? 1 - tail : tail;
}

function upperTail(distance: number): number {
  if (distance > 40) return 0;
  // Splitting z keeps exp(-z²/2) exact: the rounded part of z carries no error in its square.
  const rounded = Math.trunc(distance * 16) / 16;
  const rest = (distance - rounded) * (distance + rounded);
  const bell = Math.exp(-rounded * rounded * 0.5) * Math.exp(-rest * 0.5);
  if (distance <= NEAR_TAIL) {
    return bell * (polynomial(NEAR_NUMERATOR, distance) / polynomial(NEAR_DENOMINATOR, distance));
  }
  const inverse = 1 / (distance * distance);
  const far = inverse * (polynomial(FAR_NUMERATOR, inverse) / polynomial(FAR_DENOMINATOR, inverse));
  return (bell * (INVERSE_ROOT_TWO_PI - far)) / distance;
}

function polynomial(highestFirst: readonly number[], x: number): number {
  let value = 0;
  for (const coefficient of highestFirst) value = value * x + coefficient;
  return value;
}

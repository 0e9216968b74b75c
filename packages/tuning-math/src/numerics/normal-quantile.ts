import { requireNumber } from '../require-number.js';

const A = [
  2509.0809287301226727, 33430.575583588128105, 67265.770927008700853, 45921.953931549871457,
  13731.693765509461125, 1971.5909503065514427, 133.14166789178437745, 3.387132872796366608,
];
const B = [
  5226.495278852854561, 28729.085735721942674, 39307.89580009271061, 21213.794301586595867,
  5394.1960214247511077, 687.1870074920579083, 42.313330701600911252, 1,
];
const C = [
  7.7454501427834140764e-4, 0.0227238449892691845833, 0.24178072517745061177, 1.27045825245236838258,
  3.64784832476320460504, 5.7694972214606914055, 4.6303378461565452959, 1.42343711074968357734,
];
const D = [
  1.05075007164441684324e-9, 5.475938084995344946e-4, 0.0151986665636164571966, 0.14810397642748007459,
  0.68976733498510000455, 1.6763848301838038494, 2.05319162663775882187, 1,
];
const E = [
  2.01033439929228813265e-7, 2.71155556874348757815e-5, 0.0012426609473880784386, 0.026532189526576123093,
  0.29656057182850489123, 1.7848265399172913358, 5.4637849111641143699, 6.6579046435011037772,
];
const F = [
  2.04426310338993978564e-15, 1.4215117583164458887e-7, 1.8463183175100546818e-5, 7.868691311456132591e-4,
  0.0148753612908506148525, 0.13692988092273580531, 0.59983220655588793769, 1,
];

/**
 * The value that a standard normal variable stays below with probability p.
 *
 * @param p probability, above 0 and below 1
 * @returns z, relative error about 1e-16
 * @throws NotFiniteError; OutOfRangeError outside (0, 1)
 * Source: M. J. Wichura, Algorithm AS 241 (PPND16), Applied Statistics 37 (1988) 477-484; coefficients from
 * memory, checked against an independent library.
 * @example normalQuantile(0.975) // 1.959963984540054
 */
export function normalQuantile(p: number): number {
  requireNumber('normalQuantile', 'p', p, { min: 0, max: 1, exclusive: true });
  const fromMiddle = p - 0.5;
  if (Math.abs(fromMiddle) <= 0.425) {
    const r = 0.180625 - fromMiddle * fromMiddle;
    return fromMiddle * (polynomial(A, r) / polynomial(B, r));
  }
  const root = Math.sqrt(-Math.log(fromMiddle < 0 ? p : 1 - p));
  const size =
    root <= 5
      ? polynomial(C, root - 1.6) / polynomial(D, root - 1.6)
      : polynomial(E, root - 5) / polynomial(F, root - 5);
  return fromMiddle < 0 ? -size : size;
}

function polynomial(highestFirst: readonly number[], x: number): number {
  let value = 0;
  for (const coefficient of highestFirst) value = value * x + coefficient;
  return value;
}

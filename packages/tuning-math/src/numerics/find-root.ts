import { requireNumber } from '../require-number.js';
import { OutOfRangeError } from '../errors.js';

/** Where a root is looked for and how closely. */
export interface RootBracket {
  readonly low: number;
  readonly high: number;
  /** Width of the final bracket, in units of x; by default 4 ulp of the root. */
  readonly tolerance?: number;
}

/** A root, or the best that was reached. */
export interface RootResult {
  readonly x: number;
  readonly residual: number;
  readonly iterations: number;
  readonly converged: boolean;
}

const MAX_ITERATIONS = 200;

interface BrentState {
  a: number;
  b: number;
  c: number;
  fa: number;
  fb: number;
  fc: number;
  step: number;
  previousStep: number;
}

/**
 * Where a continuous function crosses zero inside a bracket whose ends differ in sign.
 *
 * @param f continuous on [low, high], finite there
 * @returns root, residual f(x), iterations, and whether the bracket closed to the tolerance
 * @throws NotFiniteError; OutOfRangeError where f has the same sign at both ends
 * Cost: about 10 calls of f for a smooth function, at most 200.
 * Source: R. P. Brent, Algorithms for Minimization without Derivatives (1973), ch. 4.
 * @example findRoot((x) => x * x - 2, { low: 0, high: 2 }).x // 1.41421356...
 */
export function findRoot(f: (x: number) => number, bracket: RootBracket): RootResult {
  const low = requireNumber('findRoot', 'low', bracket.low);
  const high = requireNumber('findRoot', 'high', bracket.high, { min: low });
  const fLow = requireNumber('findRoot', 'f(low)', f(low));
  const fHigh = requireNumber('findRoot', 'f(high)', f(high));
  if (fLow * fHigh > 0) {
    const value = `${fLow} and ${fHigh}`;
    throw new OutOfRangeError('findRoot', { argument: 'f at the ends', value, allowed: 'to differ in sign' });
  }
  const width = high - low;
  const state: BrentState = {
    a: low,
    b: high,
    c: low,
    fa: fLow,
    fb: fHigh,
    fc: fLow,
    step: width,
    previousStep: width,
  };
  for (let iterations = 1; iterations <= MAX_ITERATIONS; iterations += 1) {
    orderState(state);
    const tolerance = 2 * Number.EPSILON * Math.abs(state.b) + 0.5 * (bracket.tolerance ?? 0);
    const half = 0.5 * (state.c - state.b);
    if (Math.abs(half) <= tolerance || state.fb === 0) {
      return { x: state.b, residual: state.fb, iterations, converged: true };
    }
    chooseStep(state, half, tolerance);
    state.a = state.b;
    state.fa = state.fb;
    state.b += Math.abs(state.step) > tolerance ? state.step : Math.sign(half) * tolerance;
    state.fb = requireNumber('findRoot', 'f(x)', f(state.b));
  }
  return { x: state.b, residual: state.fb, iterations: MAX_ITERATIONS, converged: false };
}

/** Keeps the root between b and c, and b the better of the two. */
function orderState(state: BrentState): void {
  if (state.fb > 0 === state.fc > 0) {
    state.c = state.a;
    state.fc = state.fa;
    state.step = state.b - state.a;
    state.previousStep = state.step;
  }
  if (Math.abs(state.fc) < Math.abs(state.fb)) {
    [state.a, state.b, state.c] = [state.b, state.c, state.b];
    [state.fa, state.fb, state.fc] = [state.fb, state.fc, state.fb];
  }
}

function chooseStep(state: BrentState, half: number, tolerance: number): void {
  const bisect = (): void => {
    state.step = half;
    state.previousStep = half;
  };
  if (Math.abs(state.previousStep) < tolerance || Math.abs(state.fa) <= Math.abs(state.fb)) return bisect();
  const { p, q } = interpolate(state, half);
  const within = Math.min(3 * half * q - Math.abs(tolerance * q), Math.abs(state.previousStep * q));
  if (2 * p >= within) return bisect();
  state.previousStep = state.step;
  state.step = p / q;
}

/** Secant or inverse quadratic step p / q towards the root, with p not negative. */
function interpolate(state: BrentState, half: number): { p: number; q: number } {
  const { a, b, c, fa, fb, fc } = state;
  const s = fb / fa;
  let p = 2 * half * s;
  let q = 1 - s;
  if (a !== c) {
    const t = fa / fc;
    const r = fb / fc;
    p = s * (2 * half * t * (t - r) - (b - a) * (r - 1));
    q = (t - 1) * (r - 1) * (s - 1);
  }
  return p > 0 ? { p, q: -q } : { p: -p, q };
}

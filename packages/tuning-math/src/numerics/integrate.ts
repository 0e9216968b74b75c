import { requireNumber } from '../require-number.js';

/** Interval of integration and the accuracy asked for. */
export interface IntegrationRange {
  readonly low: number;
  readonly high: number;
  /** Accepted error relative to the largest partial integral; default 1e-12. */
  readonly relativeTolerance?: number;
  /** Accepted absolute error; default 0. */
  readonly absoluteTolerance?: number;
}

/** A definite integral with the estimate of its own error. */
export interface IntegralResult {
  readonly value: number;
  readonly errorEstimate: number;
  readonly converged: boolean;
  /** Number of panels that the interval was cut into. */
  readonly iterations: number;
}

interface Panel {
  readonly low: number;
  readonly high: number;
  readonly value: number;
  readonly error: number;
}

const MAX_PANELS = 400;

// Nodes and weights of the 7-point Gauss rule inside the 15-point Kronrod rule (QUADPACK's QK15).
const NODES = [
  0.991455371120812639206854697526329, 0.949107912342758524526189684047851,
  0.864864423359769072789712788640926, 0.741531185599394439863864773280788,
  0.58608723546769113029414483825873, 0.405845151377397166906606412076961,
  0.207784955007898467600689403773245, 0,
];
const KRONROD_WEIGHTS = [
  0.02293532201052922496373200805897, 0.063092092629978553290700663189204,
  0.104790010322250183839876322541518, 0.140653259715525918745189590510238, 0.16900472663926790282829543787,
  0.190350578064785409913256402421014, 0.204432940075298892414161999234649,
  0.209482141084727828012999174891714,
];
const GAUSS_WEIGHTS = [
  0.129484966168869693270611432679082, 0.27970539148927666790146777142378,
  0.381830050505118944950369775488975, 0.417959183673469387755102040816327,
];

/**
 * Definite integral of a smooth function, by adaptive Gauss-Kronrod quadrature.
 *
 * @param f finite on [low, high]
 * @returns value, error estimate, and whether the accuracy was reached
 * @throws NotFiniteError for bad ends or where f is not finite; OutOfRangeError where high < low
 * Cost: 15 calls of f a panel, at most 400 panels.
 * Source: Piessens et al., QUADPACK (1983), rule QK15, panel with the largest error halved first.
 * @example integrate((x) => x * x, { low: 0, high: 3 }).value // 9
 */
export function integrate(f: (x: number) => number, range: IntegrationRange): IntegralResult {
  const low = requireNumber('integrate', 'low', range.low);
  const high = requireNumber('integrate', 'high', range.high, { min: low });
  const { relativeTolerance = 1e-12, absoluteTolerance = 0 } = range;
  const panels = [measurePanel(f, low, high)];
  for (;;) {
    const value = sum(panels.map((panel) => panel.value));
    const errorEstimate = sum(panels.map((panel) => panel.error));
    const accepted = Math.max(absoluteTolerance, relativeTolerance * Math.abs(value));
    const converged = errorEstimate <= accepted;
    if (converged || panels.length >= MAX_PANELS) {
      return { value, errorEstimate, converged, iterations: panels.length };
    }
    const worst = panels.reduce(
      (best, panel, index) => (panel.error > (panels[best]?.error ?? 0) ? index : best),
      0,
    );
    const [panel] = panels.splice(worst, 1);
    if (panel === undefined) return { value, errorEstimate, converged, iterations: panels.length };
    const middle = 0.5 * (panel.low + panel.high);
    panels.push(measurePanel(f, panel.low, middle), measurePanel(f, middle, panel.high));
  }
}

function measurePanel(f: (x: number) => number, low: number, high: number): Panel {
  const centre = 0.5 * (low + high);
  const half = 0.5 * (high - low);
  let kronrod = 0;
  let gauss = 0;
  let size = 0;
  NODES.forEach((node, index) => {
    const isCentre = node === 0;
    const left = requireNumber('integrate', 'f(x)', f(centre - half * node));
    const right = isCentre ? 0 : requireNumber('integrate', 'f(x)', f(centre + half * node));
    const weight = KRONROD_WEIGHTS[index] ?? 0;
    kronrod += weight * (left + right);
    size += weight * (Math.abs(left) + Math.abs(right));
    if (index % 2 === 1) gauss += (GAUSS_WEIGHTS[(index - 1) / 2] ?? 0) * (left + right);
  });
  const difference = Math.abs((kronrod - gauss) * half);
  // QUADPACK's scaling: the Kronrod value is far better than its distance from the Gauss value.
  const scale = size * half;
  const error = scale === 0 ? 0 : scale * Math.min(1, (200 * difference) / scale) ** 1.5;
  const rounding = 50 * Number.EPSILON * scale;
  return { low, high, value: kronrod * half, error: Math.min(difference, error) < rounding ? 0 : error };
}

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0);
}

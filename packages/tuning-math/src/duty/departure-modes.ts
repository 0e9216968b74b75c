import { EigenvalueDecomposition, Matrix } from 'ml-matrix';
import { departureCovariance, dutyCovariance, heatCovariance } from './peak-covariance.js';
import { pullPlaces, type PullPlaces } from './pull-places.js';
import { FALSE_STRAY } from './response-settings.js';
import type { ScaledPulls } from './scaled-pulls.js';

/** Variance that is left out, log²: far below the least scatter's, above what rounding makes. */
const LEAST_VARIANCE = 1e-13;

/**
 * Departures of the pulls from a curve, told by the principal axes of their covariance, which are far fewer than the
 * pulls where duties are repeated or near each other. What departs at a pull follows from its place (a duty) and, in
 * proportion, from its heat: each mode is told by a figure for each place and, last, one for heat.
 */
export interface DepartureModes {
  readonly count: number;
  readonly places: PullPlaces;
  /** Heat soak at each pull. */
  readonly heats: Float64Array;
  /** Variance along each mode, log². */
  readonly variances: Float64Array;
  /** A row of `places.count + 1` for each mode; at the pulls these are unit vectors, at right angles. */
  readonly byMode: Float64Array;
  /** The same, a row of `count` for each place and for heat. */
  readonly byPlace: Float64Array;
}

/**
 * Principal axes of the covariance of departures. A pull known to be false carries the stray of false readings besides.
 * One set serves every pull-to-pull scatter, which adds the same to all variances.
 *
 * Cost: O(pulls · modes²).
 * Source: pivoted Cholesky factor F, Higham, Accuracy and Stability of Numerical Algorithms (2002), section 10.3; the
 * axes of F·F' from those of the small F'·F, Golub & Van Loan, Matrix Computations (2013), section 8.6.
 */
export function departureModes(pulls: ScaledPulls, falsePulls: ReadonlySet<number>): DepartureModes {
  const places = pullPlaces(pulls, falsePulls);
  const grounds = { places, heats: pulls.heats };
  const strays = Array.from(falsePulls, (pull) => strayColumn(grounds, pull));
  const columns = [...choleskyColumns(pulls, grounds), ...strays];
  const { kept, vectors } = principalAxes(columns);
  const width = places.count + 1;
  const byMode = new Float64Array(kept.length * width);
  const byPlace = new Float64Array(kept.length * width);
  kept.forEach(({ variance, axis }, row) => {
    const scale = 1 / Math.sqrt(variance);
    for (let place = 0; place < width; place += 1) {
      let sum = 0;
      columns.forEach(({ atPlaces }, at) => {
        sum += (atPlaces[place] as number) * vectors.get(at, axis);
      });
      byMode[row * width + place] = scale * sum;
      byPlace[place * kept.length + row] = scale * sum;
    }
  });
  const variances = Float64Array.from(kept, ({ variance }) => variance);
  return { count: kept.length, places, heats: pulls.heats, variances, byMode, byPlace };
}

interface Axes {
  readonly kept: readonly { readonly variance: number; readonly axis: number }[];
  /** A column for each axis, in terms of the factor's columns. */
  readonly vectors: Matrix;
}

/** Axes of F'·F along which there is anything to tell. */
function principalAxes(columns: readonly FactorColumn[]): Axes {
  if (columns.length === 0) return { kept: [], vectors: new Matrix(0, 0) };
  const gram = new Matrix(columns.map((one) => columns.map((other) => dot(one.atPulls, other.atPulls))));
  const { realEigenvalues, eigenvectorMatrix } = new EigenvalueDecomposition(gram, { assumeSymmetric: true });
  const axes = realEigenvalues.map((variance, axis) => ({ variance, axis }));
  return { kept: axes.filter(({ variance }) => variance > LEAST_VARIANCE), vectors: eigenvectorMatrix };
}

type Grounds = Pick<DepartureModes, 'places' | 'heats'>;

/** A column of a factor of the covariance: for each place and for heat, and what that makes at each pull. */
interface FactorColumn {
  readonly atPlaces: Float64Array;
  readonly atPulls: Float64Array;
}

/** Columns of a factor of the covariance, the pull with most variance left next, until nothing is left. */
function choleskyColumns(pulls: ScaledPulls, grounds: Grounds): FactorColumn[] {
  const columns: FactorColumn[] = [];
  const left = pulls.duties.map((duty, pull) => {
    const heat = pulls.heats[pull] as number;
    return departureCovariance([duty, duty], [heat, heat]);
  });
  while (columns.length < pulls.count) {
    const pivot = positionOfMost(left);
    const variance = left[pivot] as number;
    if (variance < LEAST_VARIANCE) break;
    const atPlaces = covarianceColumn(pulls, grounds, pivot);
    for (const known of columns) {
      const share = known.atPulls[pivot] as number;
      known.atPlaces.forEach((entry, at) => (atPlaces[at] = (atPlaces[at] as number) - share * entry));
    }
    const column = columnOf(
      atPlaces.map((entry) => entry / Math.sqrt(variance)),
      grounds,
    );
    column.atPulls.forEach((entry, pull) => (left[pull] = (left[pull] as number) - entry * entry));
    columns.push(column);
  }
  return columns;
}

/** Covariance of each place, and of a unit of heat, with one pull. */
function covarianceColumn(pulls: ScaledPulls, { places }: Grounds, pull: number): Float64Array {
  const column = new Float64Array(places.count + 1);
  const duty = pulls.duties[pull] as number;
  places.duties.forEach((other, place) => (column[place] = dutyCovariance(duty, other)));
  column[places.count] = heatCovariance(pulls.heats[pull] as number, 1);
  return column;
}

function columnOf(atPlaces: Float64Array, { places, heats }: Grounds): FactorColumn {
  const perHeat = atPlaces[places.count] as number;
  const atPulls = heats.map(
    (heat, pull) => (atPlaces[places.placeOf[pull] as number] as number) + perHeat * heat,
  );
  return { atPlaces, atPulls };
}

/** What a false pull strays by, at its own place alone. */
function strayColumn(grounds: Grounds, pull: number): FactorColumn {
  const atPlaces = new Float64Array(grounds.places.count + 1);
  atPlaces[grounds.places.placeOf[pull] as number] = FALSE_STRAY;
  return columnOf(atPlaces, grounds);
}

function positionOfMost(values: Float64Array): number {
  let most = 0;
  values.forEach((value, position) => {
    if (value > (values[most] as number)) most = position;
  });
  return most;
}

function dot(one: Float64Array, other: Float64Array): number {
  let sum = 0;
  for (let pull = 0; pull < one.length; pull += 1) sum += (one[pull] as number) * (other[pull] as number);
  return sum;
}

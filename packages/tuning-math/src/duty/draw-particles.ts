import { normalQuantile } from '../numerics/normal-quantile.js';
import { coarseLogFits } from './coarse-fit.js';
import { likeliestFloorOf } from './likeliest-floor-of.js';
import { placedRatios } from './placed-ratios.js';
import { curveLibrary } from './curve-library.js';
import { defendedWeights } from './defended-weights.js';
import type { CurveLibrary } from './tabulate-curves.js';
import { drawnFloor, floorPenalty, floorPriorOf, floorPriors } from './floor-prior.js';
import { lowDiscrepancyPoint } from './low-discrepancy.js';
import { MANY_PULLS, PARTICLE_COUNT, RISE_SPREAD, SHIFT_SPREAD } from './response-settings.js';
import type { ScaledPulls } from './scaled-pulls.js';
import { sizePenalty } from './size-prior.js';

/** Curves of the library, moved a little, that the pulls leave standing. */
export interface Particles {
  readonly count: number;
  readonly library: CurveLibrary;
  readonly rows: Int32Array;
  readonly shifts: Float64Array;
  readonly riseScales: Float64Array;
  readonly floors: Float64Array;
  /** Log of what the fine likelihood is to be multiplied by: prior of the floor over the chance of being drawn. */
  readonly logCorrections: Float64Array;
  /** Logs of peak over target at the duties that were asked for so far; see `particleLogs`. */
  readonly logs: Map<number, Float64Array>;
}

/** What else bears on the draw. */
export interface DrawOptions {
  /** Log weight of each library curve before this car's pulls; left out: all alike. */
  readonly logPrior?: Float64Array;
  /** Number of particles; default `PARTICLE_COUNT`, at most that. */
  readonly count?: number;
  /** So many of every five curves of the library are looked at; default 5, with very many pulls `FEWEST_OF_FIVE`. */
  readonly ofFive?: number;
  /** Share of the curves that is drawn as if the doubted pull had not been made; default 0.3. */
  readonly withoutDoubted?: number;
}

const WITHOUT_DOUBTED = 0.3;
/**
 * With more pulls than these, so many of every five curves are looked at: few are drawn then. Five is prime to the share
 * of curves with a wide floor.
 */
const VERY_MANY_PULLS = 12;
const FEWEST_OF_FIVE = 1;
/** A curve that fits worse than the best by more than this (log) is given up: no prior of a build makes up for it. */
const GIVEN_UP_WITH_BUILD = 36;

/**
 * Draws curves in proportion to how well they fit the pulls at a coarse look (systematic resampling, some of them as if
 * the doubted pull had not been made), each with a small shift and stretch of its own and the floor that suits the pulls
 * best. Deterministic.
 */
export function drawParticles(pulls: ScaledPulls, options: DrawOptions = {}): Particles {
  const library = curveLibrary();
  const { rows, logWeights } = drawRows(library, pulls, options);
  const particles: Particles = {
    count: rows.length,
    library,
    rows,
    shifts: moves().shifts,
    riseScales: moves().riseScales,
    floors: new Float64Array(rows.length),
    logCorrections: new Float64Array(rows.length),
    logs: new Map(),
  };
  const readings = placedRatios(pulls);
  const priors = floorPriors(pulls.baseRatio);
  rows.forEach((row, index) => {
    const prior = floorPriorOf(row, priors);
    const move = { shift: particles.shifts[index] as number, scale: particles.riseScales[index] as number };
    const floor =
      pulls.count === 0
        ? drawnFloor(prior, index)
        : likeliestFloorOf(library, row, { readings, prior, ...move });
    particles.floors[index] = floor;
    if (pulls.count === 0) return;
    const size = sizePenalty(library, row, floor);
    particles.logCorrections[index] = floorPenalty(prior, floor) + size - (logWeights[index] as number);
  });
  return particles;
}

/** Rows of the library, as often as they were drawn, and by what weight, log. */
interface DrawnRows {
  readonly rows: Int32Array;
  readonly logWeights: Float64Array;
}

function drawRows(library: CurveLibrary, pulls: ScaledPulls, options: DrawOptions): DrawnRows {
  const { logPrior, count = PARTICLE_COUNT, withoutDoubted = WITHOUT_DOUBTED } = options;
  const ofFive = options.ofFive ?? (pulls.count > VERY_MANY_PULLS ? FEWEST_OF_FIVE : 5);
  const fits = coarseLogFits(library, pulls, { ofFive, givenUpBelow: logPrior && GIVEN_UP_WITH_BUILD });
  const weights = defendedWeights(fits, withoutDoubted);
  const withPrior = logPrior
    ? weights.map((weight, fit) => weight * Math.exp(logPrior[fits.rows[fit] as number] as number))
    : weights;
  const drawn = drawSystematically(withPrior, fewerWithMany(count, pulls.count));
  return {
    rows: drawn.map((fit) => fits.rows[fit] as number),
    logWeights: Float64Array.from(drawn, (fit) => Math.log(weights[fit] as number)),
  };
}

/** Share of the curves that is drawn however many pulls there are. */
const FEWEST_SHARE = 1 / 10;

/**
 * With many pulls fewer curves are drawn, in proportion to one over the square of the pulls: what a curve costs grows with
 * them.
 */
function fewerWithMany(count: number, pullCount: number): number {
  if (pullCount <= MANY_PULLS) return count;
  return Math.round(count * Math.max((MANY_PULLS / pullCount) ** 2, FEWEST_SHARE));
}

/** Each position as often as its weight says, to the nearest whole number up or down. */
function drawSystematically(weights: Float64Array, count: number): Int32Array {
  let total = 0;
  for (const weight of weights) total += weight;
  const drawn = new Int32Array(count);
  let passed = 0;
  let made = 0;
  for (let at = 0; at < weights.length && made < count; at += 1) {
    passed += weights[at] as number;
    while (made < count && (made + 0.5) * total < passed * count) {
      drawn[made] = at;
      made += 1;
    }
  }
  return drawn.subarray(0, made);
}

interface Moves {
  readonly shifts: Float64Array;
  readonly riseScales: Float64Array;
}

let knownMoves: Moves | undefined;

function moves(): Moves {
  knownMoves ??= buildMoves();
  return knownMoves;
}

function buildMoves(): Moves {
  const shifts = new Float64Array(PARTICLE_COUNT);
  const riseScales = new Float64Array(PARTICLE_COUNT);
  for (let index = 0; index < PARTICLE_COUNT; index += 1) {
    const [along = 0.5, up = 0.5] = lowDiscrepancyPoint(index, 2);
    shifts[index] = SHIFT_SPREAD * normalQuantile(Math.max(along, 1e-4));
    riseScales[index] = Math.exp(RISE_SPREAD * normalQuantile(Math.max(up, 1e-4)));
  }
  return { shifts, riseScales };
}

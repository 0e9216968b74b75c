import { normalQuantile } from '../numerics/normal-quantile.js';
import { coarseLogFits } from './coarse-fit.js';
import { likeliestFloorOf } from './likeliest-floor-of.js';
import { placedRatios } from './placed-ratios.js';
import { curveLibrary } from './curve-library.js';
import { defendedWeights } from './defended-weights.js';
import type { CurveLibrary } from './tabulate-curves.js';
import { drawnFloor, floorPenalty } from './floor-prior.js';
import { lowDiscrepancyPoint } from './low-discrepancy.js';
import { PARTICLE_COUNT, RISE_SPREAD, SHIFT_SPREAD } from './response-settings.js';
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
  /** Possible responses; default the usual ones. */
  readonly library?: CurveLibrary;
  /** Log weight of each library curve before this car's pulls; left out: all alike. */
  readonly logPrior?: Float64Array;
  /** Number of particles; default `PARTICLE_COUNT`, at most that. */
  readonly count?: number;
  /** Only every n-th curve of the library is looked at; default 1. */
  readonly every?: number;
  /** Share of the curves that is drawn as if the doubted pull had not been made; default 0.3. */
  readonly withoutDoubted?: number;
}

const WITHOUT_DOUBTED = 0.3;

/**
 * Draws curves in proportion to how well they fit the pulls at a coarse look (systematic resampling, some of them as if
 * the doubted pull had not been made), each with
 * a small shift and stretch of its own and the floor that suits the pulls best. Deterministic.
 */
export function drawParticles(pulls: ScaledPulls, options: DrawOptions = {}): Particles {
  const { library = curveLibrary(), logPrior, count, every, withoutDoubted = WITHOUT_DOUBTED } = options;
  const weights = defendedWeights(coarseLogFits(library, pulls, every), withoutDoubted);
  const drawn = logPrior ? weights.map((weight, row) => weight * Math.exp(logPrior[row] as number)) : weights;
  const rows = drawRows(drawn, count ?? PARTICLE_COUNT);
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
  const { baseRatio } = pulls;
  rows.forEach((row, index) => {
    const move = { shift: particles.shifts[index] as number, scale: particles.riseScales[index] as number };
    const floor =
      pulls.count === 0
        ? drawnFloor(row, index, baseRatio)
        : likeliestFloorOf(library, row, { readings, baseRatio, ...move });
    particles.floors[index] = floor;
    if (pulls.count === 0) return;
    const prior = floorPenalty(row, floor, baseRatio) + sizePenalty(library, row, floor);
    particles.logCorrections[index] = prior - Math.log(weights[row] as number);
  });
  return particles;
}

/** Each row as often as its weight says, to the nearest whole number up or down. */
function drawRows(weights: Float64Array, count: number): Int32Array {
  let total = 0;
  for (const weight of weights) total += weight;
  const rows = new Int32Array(count);
  let passed = 0;
  let drawn = 0;
  for (let row = 0; row < weights.length && drawn < count; row += 1) {
    passed += weights[row] as number;
    while (drawn < count && (drawn + 0.5) * total < passed * count) {
      rows[drawn] = row;
      drawn += 1;
    }
  }
  return rows.subarray(0, drawn);
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

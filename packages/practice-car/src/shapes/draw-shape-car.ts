import { drawBetween } from '../random/draw-between.js';
import { drawNormal } from '../random/draw-normal.js';
import { drawOne } from '../random/draw-one.js';
import { seededRandom, type Random } from '../random/seeded-random.js';
import type { FaultDraw } from './fault-draw.js';
import type { MeanPeakKpa, ResponseShape, ShapeCar, ShapeConditions, ShapeFault } from './shape-car.js';
import type { RiseDraw } from './rise-draw.js';
import { BASE_READING_SPREAD, DRAWN_RANGES } from './drawn-ranges.js';
import { drawGoal, type DrawnGoal } from './draw-goal.js';

/** Nothing departs from what the shapes were made with. */
export const USUAL_CONDITIONS: ShapeConditions = { scatter: 1, soak: 1, falsePulls: 1, steepness: 1 };

/** Which car to draw. */
export interface ShapeCarOrder {
  readonly shape: ResponseShape;
  /** One of these makes the healthy response. */
  readonly rises: readonly RiseDraw[];
  /** What the fault of a faulty kind does; left out: the usual soaring or falling one. */
  readonly fault?: FaultDraw;
  readonly seed: number;
  readonly conditions?: ShapeConditions;
}

/** Draws that miss what the kind asks for are made again; a kind that needs more than this is a mistake. */
const MOST_DRAWS = 500;

/**
 * Draws one car of a shape: response, target within (or, by its kind, out of) its power, ceiling 6 to 12 % above
 * the target, tolerance 2 to 3 %, scatter 0.5 to 2.5 %, heat soak up to 3 %, false pulls up to 4 in 100.
 * Deterministic in the seed.
 *
 * @throws {Error} if no car of the kind turns up in 500 draws
 */
export function drawShapeCar(order: ShapeCarOrder): ShapeCar {
  const { shape, rises, fault, seed, conditions = USUAL_CONDITIONS } = order;
  const random = seededRandom(seed);
  for (let draw = 0; draw < MOST_DRAWS; draw += 1) {
    const baseKpa = drawBetween(random, ...DRAWN_RANGES.baseKpa);
    const rise = drawOne(random, rises)(random, conditions.steepness);
    const meanKpa = (duty: number): number => baseKpa * rise(duty);
    const goal = drawGoal(random, { meanKpa, kind: shape.kind, baseKpa });
    if (!goal) continue;
    return assemble({ shape, fault, seed, conditions, random }, { meanKpa, goal, baseKpa });
  }
  throw new Error(`no car of the shape ${shape.name} in ${MOST_DRAWS} draws`);
}

interface Order {
  readonly shape: ResponseShape;
  readonly fault: FaultDraw | undefined;
  readonly seed: number;
  readonly conditions: ShapeConditions;
  readonly random: Random;
}

interface Response {
  readonly meanKpa: MeanPeakKpa;
  readonly goal: DrawnGoal;
  readonly baseKpa: number;
}

function assemble(
  { shape, fault, seed, conditions, random }: Order,
  { meanKpa, goal, baseKpa }: Response,
): ShapeCar {
  const baseKnown = random() < 0.7;
  return {
    shape,
    seed,
    controller: goal.controller,
    goal: goal.goal,
    baseKpa: baseKnown ? baseKpa * (1 + BASE_READING_SPREAD * drawNormal(random)) : null,
    truth: {
      meanKpa,
      scatterRatio: conditions.scatter * drawBetween(random, ...DRAWN_RANGES.scatterRatio),
      soakShiftRatio: conditions.soak * drawBetween(random, ...DRAWN_RANGES.soakShiftRatio),
      soakPulls: drawBetween(random, ...DRAWN_RANGES.soakPulls),
      falsePullShare: conditions.falsePulls * drawBetween(random, ...DRAWN_RANGES.falsePullShare),
      fault: drawFault(random, { shape, fault, meanKpa, baseKpa, goal }),
    },
  };
}

interface FaultOrder {
  readonly shape: ResponseShape;
  readonly fault: FaultDraw | undefined;
  readonly meanKpa: MeanPeakKpa;
  readonly baseKpa: number;
  readonly goal: DrawnGoal;
}

function drawFault(random: Random, { shape, fault, meanKpa, baseKpa, goal }: FaultOrder): ShapeFault | null {
  const pullsOnTheWay = Math.max(Math.ceil(goal.goodDuty / 10), 2);
  const fromPull = 1 + Math.floor(random() * pullsOnTheWay);
  if (fault) return { fromPull, meanKpa: fault(random, { meanKpa, ...goal }) };
  if (shape.kind === 'soaring-fault') {
    const soar = drawBetween(random, 1.25, 2);
    const ceiling = goal.goal.ceilingKpa;
    return { fromPull, meanKpa: (healthyKpa) => Math.max(healthyKpa * soar, ceiling * (0.85 + 0.25 * soar)) };
  }
  if (shape.kind !== 'falling-fault') return null;
  const left = drawBetween(random, 0.6, 0.88);
  const toBase = random() < 0.4;
  return { fromPull, meanKpa: (healthyKpa) => (toBase ? Math.min(baseKpa, healthyKpa) : healthyKpa * left) };
}

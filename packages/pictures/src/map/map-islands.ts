import type { PathShape } from '../figures/shapes.js';
import { tidyTicks } from '../figures/tidy-ticks.js';
import type { MapSpeedLine, MapSpot } from './map-figures.js';
import type { MapGround } from './map-ground.js';

/** Points of a line between which efficiency is taken for straight. */
const STEPS = 12;
const MOST_LEVELS = 4;

/** A point of the map with what is known there. */
interface Known extends MapSpot {
  readonly efficiencyPct: number;
}

/** One line of equal efficiency, in pieces. */
export interface MapIsland {
  readonly text: string;
  readonly pieces: readonly (readonly [MapSpot, MapSpot])[];
  /** Where its figure stands best: its highest point. */
  readonly top: MapSpot;
}

/** Lines of equal efficiency between the speed lines; none where a line lacks efficiencies. */
export function mapIslands(lines: readonly MapSpeedLine[]): readonly MapIsland[] {
  const rows = lines.map(evenly);
  if (rows.some((row) => row === null)) return [];
  const grid = rows.flatMap((row) => (row === null ? [] : [row]));
  const all = grid.flat().map(({ efficiencyPct }) => efficiencyPct);
  const span = { low: Math.min(...all), high: Math.max(...all) };
  if (!(span.high > span.low)) return [];
  const triangles = trianglesOf(grid);
  return tidyTicks(span, MOST_LEVELS).flatMap(({ value, text }) => {
    const pieces = triangles.flatMap((corners) => crossing(corners, value));
    const ends = pieces.flat();
    const [first] = ends;
    if (first === undefined) return [];
    const top = ends.reduce((best, one) => (one.pressureRatio > best.pressureRatio ? one : best), first);
    return [{ text: `${text} %`, pieces, top }];
  });
}

/** An island as one path of many short pieces. */
export function islandPath({ pieces }: MapIsland, { x, y }: MapGround): PathShape {
  const at = (spot: MapSpot) => `${round(x(spot.flowKgPerS))} ${round(y(spot.pressureRatio))}`;
  return { kind: 'path', role: 'island', d: pieces.map(([from, to]) => `M${at(from)}L${at(to)}`).join('') };
}

/** The line at even shares of its flow from surge to choke; null where it lacks efficiencies. */
function evenly({ spots, efficienciesPct }: MapSpeedLine): readonly Known[] | null {
  const known = spots.map((spot, index) => ({ ...spot, efficiencyPct: efficienciesPct?.[index] ?? NaN }));
  const [first, last] = [known[0], known.at(-1)];
  const isTold = known.length >= 2 && known.every(({ efficiencyPct }) => Number.isFinite(efficiencyPct));
  if (first === undefined || last === undefined || !isTold) return null;
  return Array.from({ length: STEPS + 1 }, (_, step) => {
    const flowKgPerS = first.flowKgPerS + ((last.flowKgPerS - first.flowKgPerS) * step) / STEPS;
    return between(known, flowKgPerS);
  });
}

function between(known: readonly Known[], flowKgPerS: number): Known {
  const found = known.findIndex((one) => one.flowKgPerS >= flowKgPerS);
  const right = found < 0 ? known.length - 1 : Math.max(1, found);
  const [from, to] = [known[right - 1], known[right]];
  if (from === undefined || to === undefined) throw new RangeError('a speed line needs two points');
  const width = to.flowKgPerS - from.flowKgPerS;
  return mix(from, to, width > 0 ? Math.min(1, (flowKgPerS - from.flowKgPerS) / width) : 1);
}

type Triangle = readonly [Known, Known, Known];

function trianglesOf(grid: readonly (readonly Known[])[]): readonly Triangle[] {
  return grid.slice(1).flatMap((fast, index) => {
    const slow = grid[index] ?? [];
    return fast.slice(1).flatMap((d, step): Triangle[] => {
      const [a, b, c] = [slow[step], slow[step + 1], fast[step]];
      if (a === undefined || b === undefined || c === undefined) return [];
      return [
        [a, b, c],
        [b, c, d],
      ];
    });
  });
}

/** Where a level runs across a triangle; efficiency is a plane over it. */
function crossing([a, b, c]: Triangle, level: number): (readonly [MapSpot, MapSpot])[] {
  const cuts = (
    [
      [a, b],
      [b, c],
      [c, a],
    ] as const
  ).flatMap(([from, to]) => {
    const isAbove = from.efficiencyPct >= level;
    if (isAbove === to.efficiencyPct >= level) return [];
    return [mix(from, to, (level - from.efficiencyPct) / (to.efficiencyPct - from.efficiencyPct))];
  });
  const [start, end] = cuts;
  return start === undefined || end === undefined ? [] : [[start, end]];
}

function mix(from: Known, to: Known, share: number): Known {
  const at = (a: number, b: number) => a * (1 - share) + b * share;
  return {
    flowKgPerS: at(from.flowKgPerS, to.flowKgPerS),
    pressureRatio: at(from.pressureRatio, to.pressureRatio),
    efficiencyPct: at(from.efficiencyPct, to.efficiencyPct),
  };
}

function round(value: number): string {
  return String(Math.round(value * 100) / 100);
}

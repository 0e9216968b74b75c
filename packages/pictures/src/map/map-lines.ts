import type { PathShape, Shape, ShapeRole } from '../figures/shapes.js';
import type { MapFigures, MapSpeedLine, MapSpot } from './map-figures.js';
import type { MapGround } from './map-ground.js';
import { islandPath, mapIslands } from './map-islands.js';

/** Efficiency islands, speed lines, the surge line with what lies beyond it, the choke line, the engine's lines and the ways of the pulls. */
export function mapLines({ lines, goals, pulls }: MapFigures, ground: MapGround): readonly Shape[] {
  const surge = endsOf(lines, 0);
  return [
    ...beyondSurge(surge, ground),
    ...mapIslands(lines).map((island) => islandPath(island, ground)),
    ...lines.flatMap(({ spots }) => path('speed-line', spots, ground)),
    ...path('surge', surge, ground),
    ...path('choke', endsOf(lines, -1), ground),
    ...pulls.flatMap(({ spots }) => path('trail', spots, ground)),
    ...goals.flatMap(({ spots }) => path('goal-line', spots, ground)),
  ];
}

function endsOf(lines: readonly MapSpeedLine[], end: 0 | -1): readonly MapSpot[] {
  return lines.flatMap(({ spots }) => spots.at(end) ?? []);
}

function beyondSurge(surge: readonly MapSpot[], ground: MapGround): PathShape[] {
  const [first, last] = [surge[0], surge.at(-1)];
  if (first === undefined || last === undefined || surge.length < 2) return [];
  const { left, y } = ground;
  const back = `L${round(left)} ${round(y(last.pressureRatio))}L${round(left)} ${round(y(first.pressureRatio))}Z`;
  return [{ kind: 'path', role: 'beyond', d: `${pathOf(surge, ground)}${back}` }];
}

function path(role: ShapeRole, spots: readonly MapSpot[], ground: MapGround): PathShape[] {
  return spots.length < 2 ? [] : [{ kind: 'path', role, d: pathOf(spots, ground) }];
}

function pathOf(spots: readonly MapSpot[], { x, y }: MapGround): string {
  return spots
    .map(
      (spot, index) =>
        `${index === 0 ? 'M' : 'L'}${round(x(spot.flowKgPerS))} ${round(y(spot.pressureRatio))}`,
    )
    .join('');
}

function round(value: number): string {
  return String(Math.round(value * 100) / 100);
}

import { hatch } from '../figures/hatch.js';
import type { Shape } from '../figures/shapes.js';
import { textWidth } from '../figures/text-width.js';
import type { GridCell, GridFigures } from './grid-figures.js';
import { CHANCE_SIZE, PAD, TEXT_SIZE, type GridGround } from './grid-ground.js';
import { sayChance } from './say-chance.js';

interface CellPlace {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** All cells: chance of passing the ceiling over a small bar of the range, with the ceiling as a wall. */
export function gridCells(figures: GridFigures, ground: GridGround): readonly Shape[] {
  return figures.rows.flatMap(({ cells }, row) =>
    cells.flatMap((cell, column) => {
      const place = {
        x: ground.left + column * ground.cellWidth + 1,
        y: ground.top + row * ground.cellHeight + 1,
        width: ground.cellWidth - 2,
        height: ground.cellHeight - 2,
      };
      return cell.status === 'unknown' ? unknownCell(place) : toldCell(cell, place, { figures, ground });
    }),
  );
}

/** Hatched, with the word where there is room for it. */
function unknownCell(place: CellPlace): Shape[] {
  const word = textWidth('unknown', TEXT_SIZE) + 2 * PAD <= place.width ? 'unknown' : '?';
  const half = textWidth(word, TEXT_SIZE) / 2 + 3;
  const middle = { x: place.x + place.width / 2, y: place.y + place.height / 2 };
  const plate = {
    x: middle.x - half,
    y: middle.y - TEXT_SIZE * 0.75,
    width: half * 2,
    height: TEXT_SIZE * 1.5,
  };
  return [
    { kind: 'rect', role: 'cell', ...place, cornerRadius: 3 },
    hatch(place, 9),
    { kind: 'rect', role: 'plate', ...plate, cornerRadius: 3 },
    {
      ...{ kind: 'text', role: 'unknown-text', text: word, size: TEXT_SIZE, anchor: 'middle' },
      ...{ x: middle.x, y: middle.y + TEXT_SIZE * 0.35, weight: 'normal', turn: 0 },
    } as const,
  ];
}

function toldCell(
  cell: GridCell,
  place: CellPlace,
  { figures, ground }: { figures: GridFigures; ground: GridGround },
): Shape[] {
  const isRisky = cell.probabilityOverCeiling > figures.riskLimit;
  const chance = sayChance(cell.probabilityOverCeiling);
  const marked = isRisky ? `▲ ${chance}` : chance;
  const room = place.width - 4;
  const text = textWidth(marked, CHANCE_SIZE) <= room ? marked : chance;
  const size = CHANCE_SIZE * Math.min(1, room / textWidth(text, CHANCE_SIZE));
  const wall = place.x + ground.across(figures.ceilingKpa);
  const barY = place.y + place.height - PAD - 9;
  const walls = { x1: wall, x2: wall, y1: barY - 5, y2: barY + 11 };
  const role = isRisky ? 'cell-over' : cell.status === 'beyond' ? 'cell-beyond' : 'cell';
  return [
    { kind: 'rect', role, ...place, cornerRadius: 3 },
    {
      ...{ kind: 'text', role: isRisky ? 'risk-text' : 'chance-text', text, size },
      ...{ x: place.x + place.width / 2, y: place.y + PAD + CHANCE_SIZE * 0.8 },
      ...{ anchor: 'middle', weight: isRisky ? 'bold' : 'normal', turn: 0 },
    } as const,
    ...rangeBar(cell, place, { ground, wall, barY }),
    { kind: 'line', role: 'ceiling-mark', ...walls },
  ];
}

/** The range of a pull, cut at the cell's edges; what lies past the ceiling is a square block of its own. */
function rangeBar(
  cell: GridCell,
  place: CellPlace,
  { ground, wall, barY }: { ground: GridGround; wall: number; barY: number },
): Shape[] {
  const [first, last] = [place.x + 2, place.x + place.width - 2];
  const at = (kpa: number): number => Math.min(last, Math.max(first, place.x + ground.across(kpa)));
  const [from, to] = [at(cell.lowKpa), at(cell.highKpa)];
  const bar = (role: 'range' | 'range-over', x1: number, x2: number): Shape[] =>
    x2 - x1 < 0.5 ? [] : [{ kind: 'rect', role, x: x1, y: barY, width: x2 - x1, height: 6, cornerRadius: 0 }];
  return [...bar('range', from, Math.min(to, wall)), ...bar('range-over', Math.max(from, wall), to)];
}

import { linearScale, type Scale } from '../figures/linear-scale.js';
import { spanOf } from '../figures/span-of.js';
import { textWidth } from '../figures/text-width.js';
import type { GridFigures } from './grid-figures.js';

/** Where the cells of a grid stand, px. */
export interface GridGround {
  readonly left: number;
  readonly top: number;
  readonly cellWidth: number;
  readonly cellHeight: number;
  readonly width: number;
  readonly height: number;
  /** Boost to a place across a cell, from 0 at its left edge. */
  readonly across: Scale;
}

export const TEXT_SIZE = 13;
export const CHANCE_SIZE = 15;
/** Room inside a cell on every side. */
export const PAD = 5;
const HEAD_HEIGHT = 44;
const CELL_HEIGHT = 46;
const LEAST_SPAN_KPA = 10;
/** An unknown effect may reach so far that it would flatten what is known: it does not set the scale. */
const SHARE_PAST_CEILING = 0.08;

/** Lays out names, heads and cells; every cell has one and the same scale of boost. */
export function gridGround(figures: GridFigures, width: number): GridGround {
  const widest = Math.max(
    ...[...figures.rows.map(({ label }) => label)].map((label) => textWidth(label, TEXT_SIZE)),
  );
  const left = Math.min(width * 0.25, widest + 10);
  const cellWidth = (width - left) / figures.columns.length;
  const told = figures.rows.flatMap(({ cells }) => cells.filter(({ status }) => status !== 'unknown'));
  const ends = told.flatMap(({ lowKpa, highKpa }) => [lowKpa, highKpa]);
  const { ceilingKpa } = figures;
  const span = spanOf([...ends, ceilingKpa, ceilingKpa * (1 + SHARE_PAST_CEILING)], LEAST_SPAN_KPA);
  return {
    left,
    top: HEAD_HEIGHT,
    cellWidth,
    cellHeight: CELL_HEIGHT,
    width,
    height: HEAD_HEIGHT + figures.rows.length * CELL_HEIGHT + 2,
    across: linearScale(span, PAD, cellWidth - PAD),
  };
}

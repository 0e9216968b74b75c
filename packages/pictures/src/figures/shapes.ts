/**
 * What a shape stands for. Whoever draws gives each role its look (colour on screen, grey on paper); the shape
 * alone already tells them apart without colour.
 *
 * - `axis`, `tick`, `grid`: the scale itself
 * - `band` and its `hatch`: target and tolerance
 * - `target`: the line of the wanted peak
 * - `wall` and the room `beyond` it: the ceiling
 * - `base`: boost with the solenoid idle
 * - `pull`, `void`, `over`: a usable pull (filled circle), a void one (hollow), one past the ceiling (square)
 * - `next`: where the next pull's peak is expected (open bar)
 * - `curve-band`, `curve`: predicted response, its range and its median
 * - `speed-line`, `island` (equal efficiency), `surge`, `choke`: a compressor map; `goal-line`: the engine's line on it;
 *   `trail`: the way of a pull
 * - `past`: a pull of the baseline; `centre`: its mean; `limit`, `limit-average`: limits of single pulls and of their
 *   moving average; `fired`: where a rule fired
 * - `cell`, `cell-beyond`, `cell-over`: a forecast told by the pulls, one further out than they are, one too likely to
 *   pass the ceiling; `range`, `range-over`: where a pull's peak is expected, below and past the `ceiling-mark`;
 *   `plate`: what keeps a word clear of a hatch
 * - `leader`: from a mark that had to give way to the place where it belongs
 * - `...-text`: words and figures, named after what they belong to; `note-text` says what is still missing
 */
export type ShapeRole =
  | 'axis'
  | 'tick'
  | 'grid'
  | 'band'
  | 'hatch'
  | 'target'
  | 'wall'
  | 'beyond'
  | 'base'
  | 'pull'
  | 'void'
  | 'over'
  | 'next'
  | 'curve-band'
  | 'curve'
  | 'speed-line'
  | 'island'
  | 'surge'
  | 'choke'
  | 'goal-line'
  | 'trail'
  | 'past'
  | 'centre'
  | 'limit'
  | 'limit-average'
  | 'fired'
  | 'cell'
  | 'cell-beyond'
  | 'cell-over'
  | 'range'
  | 'range-over'
  | 'ceiling-mark'
  | 'plate'
  | 'leader'
  | 'tick-text'
  | 'axis-text'
  | 'target-text'
  | 'wall-text'
  | 'base-text'
  | 'next-text'
  | 'goal-text'
  | 'island-text'
  | 'pull-text'
  | 'void-text'
  | 'over-text'
  | 'past-text'
  | 'centre-text'
  | 'chance-text'
  | 'risk-text'
  | 'unknown-text'
  | 'note-text';

/** A straight line. All geometry: px on screen, pt on paper, y downwards. */
export interface LineShape {
  readonly kind: 'line';
  readonly role: ShapeRole;
  readonly x1: number;
  readonly y1: number;
  readonly x2: number;
  readonly y2: number;
}

export interface RectShape {
  readonly kind: 'rect';
  readonly role: ShapeRole;
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
  readonly cornerRadius: number;
}

export interface CircleShape {
  readonly kind: 'circle';
  readonly role: ShapeRole;
  readonly cx: number;
  readonly cy: number;
  readonly r: number;
}

/** SVG path data with absolute `M`, `L` and `Z` only. */
export interface PathShape {
  readonly kind: 'path';
  readonly role: ShapeRole;
  readonly d: string;
}

/** One line of text; `y` is its base line, `x` its start, middle or end as `anchor` says. */
export interface TextShape {
  readonly kind: 'text';
  readonly role: ShapeRole;
  readonly x: number;
  readonly y: number;
  readonly text: string;
  readonly size: number;
  readonly anchor: 'start' | 'middle' | 'end';
  readonly weight: 'normal' | 'bold';
  /** Degrees clockwise about (x, y); 0, or -90 for the name of an upright axis. */
  readonly turn: number;
}

export type Shape = LineShape | RectShape | CircleShape | PathShape | TextShape;

/** A picture in plain shapes, back to front, with the same story in words and as a table. */
export interface Picture {
  readonly width: number;
  readonly height: number;
  readonly shapes: readonly Shape[];
  /** Text alternative: all that the picture says, in a few sentences. */
  readonly description: string;
  readonly table: PictureTable;
}

/** The picture's figures as a table; every row has as many cells as `header`. */
export interface PictureTable {
  readonly header: readonly string[];
  readonly rows: readonly (readonly string[])[];
}

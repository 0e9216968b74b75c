import type { Shape } from '../figures/shapes.js';

/** The CSS class by which a shape gets its look, in `renderSvg` and wherever else a picture is drawn as SVG. */
export function shapeClass(shape: Pick<Shape, 'role'>): string {
  return `picture-${shape.role}`;
}

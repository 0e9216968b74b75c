export interface Point {
  readonly x: number;
  readonly y: number;
}

/**
 * Cuts a closed polygon at an upper and a lower edge (Sutherland and Hodgman, Reentrant polygon clipping,
 * Communications of the ACM 17, 1974).
 *
 * @param top smaller `y` than `bottom`
 */
export function clipPolygon(points: readonly Point[], top: number, bottom: number): readonly Point[] {
  const below = cutAt(points, top, (y) => y >= top);
  return cutAt(below, bottom, (y) => y <= bottom);
}

/** Cuts an open line the same way, into the runs that lie inside. */
export function clipLine(
  points: readonly Point[],
  top: number,
  bottom: number,
): readonly (readonly Point[])[] {
  const runs: Point[][] = [];
  points.slice(1).forEach((to, index) => {
    const from = points[index];
    const piece = from ? clipSegment(from, to, { top, bottom }) : null;
    if (!piece) return;
    const open = runs.at(-1);
    const end = open?.at(-1);
    if (open && end && end.x === piece[0].x && end.y === piece[0].y) open.push(piece[1]);
    else runs.push([...piece]);
  });
  return runs;
}

function cutAt(points: readonly Point[], edge: number, isInside: (y: number) => boolean): Point[] {
  return points.flatMap((point, index) => {
    const before = points.at(index - 1) ?? point;
    const crossing = { x: before.x + (point.x - before.x) * shareAt(before.y, point.y, edge), y: edge };
    if (isInside(point.y)) return isInside(before.y) ? [point] : [crossing, point];
    return isInside(before.y) ? [crossing] : [];
  });
}

function clipSegment(
  from: Point,
  to: Point,
  { top, bottom }: { readonly top: number; readonly bottom: number },
): [Point, Point] | null {
  if (Math.max(from.y, to.y) < top || Math.min(from.y, to.y) > bottom) return null;
  const cut = (end: Point, other: Point): Point => {
    const y = Math.min(bottom, Math.max(top, end.y));
    return y === end.y ? end : { x: end.x + (other.x - end.x) * shareAt(end.y, other.y, y), y };
  };
  return [cut(from, to), cut(to, from)];
}

/** How far from `a` to `b` the edge lies, 0 to 1; in halves, so that it does not overflow. */
function shareAt(a: number, b: number, edge: number): number {
  const whole = b / 2 - a / 2;
  return whole === 0 ? 0 : Math.min(1, Math.max(0, (edge / 2 - a / 2) / whole));
}

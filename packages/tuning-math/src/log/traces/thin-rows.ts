/**
 * Rows to draw of a column from `first` up to but not including `end`: the stretch is parted into
 * `points / 2` parts, and of each part the rows of its lowest and highest sample stay, in time order. The
 * first and last row stay too. All rows where there are few enough.
 *
 * Cost: O(rows). Source: common practice for line charts, no source.
 */
export function thinRows(column: Float32Array, first: number, end: number, points: number): number[] {
  const count = end - first;
  if (count <= points) return Array.from({ length: Math.max(count, 0) }, (_, index) => first + index);
  const rows = new Set<number>([first]);
  const partCount = Math.max(1, Math.floor(points / 2) - 1);
  for (let part = 0; part < partCount; part += 1) {
    const from = first + Math.floor((part * count) / partCount);
    const to = first + Math.floor(((part + 1) * count) / partCount);
    for (const row of extremes(column, from, to)) rows.add(row);
  }
  rows.add(end - 1);
  return [...rows].sort((a, b) => a - b);
}

function extremes(column: Float32Array, from: number, to: number): number[] {
  let [lowest, highest] = [from, from];
  for (let row = from; row < to; row += 1) {
    const value = column[row] as number;
    if (Number.isNaN(value)) continue;
    if (!(value >= (column[lowest] as number))) lowest = row;
    if (!(value <= (column[highest] as number))) highest = row;
  }
  return [lowest, highest];
}

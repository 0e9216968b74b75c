/** A label that wants to stand at `at` (its middle) along one line. */
export interface WantedLabel {
  readonly at: number;
  /** Its extent along the line. */
  readonly extent: number;
  /** The higher, the longer it stays where there is not room for all. */
  readonly weight: number;
}

export interface SpreadRoom {
  readonly start: number;
  readonly end: number;
  /** Least distance between two labels. */
  readonly gap: number;
}

/**
 * Moves labels along a line until none touches another and all lie inside, each as near as may be to its place, in
 * the order of their places. Where there is not room for all, the lightest are left out.
 *
 * @returns the middle of each label, or null for one that was left out; same order as given
 */
export function spreadLabels(labels: readonly WantedLabel[], room: SpreadRoom): readonly (number | null)[] {
  const kept = labels.map((label, index) => ({ label, index }));
  const needed = (): number =>
    kept.reduce((sum, { label }) => sum + label.extent, 0) + room.gap * Math.max(0, kept.length - 1);
  while (kept.length > 0 && needed() > room.end - room.start) {
    const lightest = kept.reduce((least, one) => (one.label.weight < least.label.weight ? one : least));
    kept.splice(kept.indexOf(lightest), 1);
  }
  kept.sort((a, b) => a.label.at - b.label.at || a.index - b.index);
  const middles = pushApart(
    kept.map(({ label }) => label),
    room,
  );
  const placed: (number | null)[] = labels.map(() => null);
  kept.forEach(({ index }, position) => {
    placed[index] = middles[position] ?? null;
  });
  return placed;
}

/**
 * Least squares under 'none touches its neighbour': with the room that the labels before take out of each place,
 * that is isotonic regression, solved by pooling adjacent violators (Robertson, Wright, Dykstra, Order Restricted
 * Statistical Inference, 1988, section 1.2).
 */
function pushApart(labels: readonly WantedLabel[], room: SpreadRoom): number[] {
  const taken: number[] = [];
  let sum = 0;
  for (const { extent } of labels) {
    taken.push(sum);
    sum += extent + room.gap;
  }
  const last = room.end - (sum - room.gap);
  const wanted = labels.map((label, index) => label.at - label.extent / 2 - (taken[index] ?? 0));
  const starts = pool(
    wanted,
    labels.map(({ weight }) => weight),
  );
  return labels.map((label, index) => {
    const start = Math.min(last, Math.max(room.start, starts[index] ?? room.start));
    return start + (taken[index] ?? 0) + label.extent / 2;
  });
}

/** The non-decreasing series nearest to `values` in weighted least squares. */
function pool(values: readonly number[], weights: readonly number[]): number[] {
  const blocks: { mean: number; weight: number; count: number }[] = [];
  values.forEach((value, index) => {
    let block = { mean: value, weight: weights[index] ?? 1, count: 1 };
    for (let before = blocks.at(-1); before && before.mean > block.mean; before = blocks.at(-1)) {
      blocks.pop();
      const weight = before.weight + block.weight;
      const mean = (before.mean * before.weight + block.mean * block.weight) / weight;
      block = { mean, weight, count: before.count + block.count };
    }
    blocks.push(block);
  });
  return blocks.flatMap(({ mean, count }) => Array.from({ length: count }, () => mean));
}

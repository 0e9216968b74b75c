/** What a channel's samples look like, as far as drawing needs it. */
export interface ChannelFacts {
  readonly sampleCount: number;
  readonly intervalS: number | null;
  readonly lowest: number | null;
  readonly highest: number | null;
  readonly usualLow: number | null;
  readonly usualHigh: number | null;
}

const MOST_GAPS = 10_000;

/**
 * Counts and extremes of a channel. The usual extremes are those of the running median of three samples, so that a
 * lone wild sample does not flatten all others (Tukey, Exploratory Data Analysis, 1977, chapter 7).
 *
 * @param values samples by row, NaN where missing
 * Cost: O(rows).
 */
export function channelFacts(values: Float32Array, timeS: Float64Array): ChannelFacts {
  const rows = new Facts();
  let [before, last] = [NaN, NaN];
  let lastTimeS = NaN;
  for (let row = 0; row < values.length; row += 1) {
    const value = values[row] as number;
    if (Number.isNaN(value)) continue;
    rows.take(value, (timeS[row] as number) - lastTimeS);
    if (!Number.isNaN(before)) rows.takeUsual(medianOfThree(before, last, value));
    [before, last, lastTimeS] = [last, value, timeS[row] as number];
  }
  return rows.told();
}

class Facts {
  #count = 0;
  #low = Infinity;
  #high = -Infinity;
  #usualLow = Infinity;
  #usualHigh = -Infinity;
  #gaps: number[] = [];
  #stride = 1;

  take(value: number, gapS: number): void {
    this.#count += 1;
    this.#low = Math.min(this.#low, value);
    this.#high = Math.max(this.#high, value);
    if (!(gapS > 0) || this.#count % this.#stride !== 0) return;
    this.#gaps.push(gapS);
    if (this.#gaps.length <= MOST_GAPS) return;
    this.#gaps = this.#gaps.filter((_, index) => index % 2 === 0);
    this.#stride *= 2;
  }

  takeUsual(value: number): void {
    this.#usualLow = Math.min(this.#usualLow, value);
    this.#usualHigh = Math.max(this.#usualHigh, value);
  }

  told(): ChannelFacts {
    const gaps = Float64Array.from(this.#gaps).sort();
    const [lowest, highest] = [finite(this.#low), finite(this.#high)];
    return {
      sampleCount: this.#count,
      intervalS: gaps[gaps.length >> 1] ?? null,
      lowest,
      highest,
      usualLow: finite(this.#usualLow) ?? lowest,
      usualHigh: finite(this.#usualHigh) ?? highest,
    };
  }
}

const finite = (value: number): number | null => (Number.isFinite(value) ? value : null);

function medianOfThree(a: number, b: number, c: number): number {
  return Math.max(Math.min(a, b), Math.min(Math.max(a, b), c));
}

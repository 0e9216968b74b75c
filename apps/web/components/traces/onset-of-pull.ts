import type { TraceIndex } from '@pullbook/contracts';
import { filteredChannel } from './lanes-of';
import type { TraceReader } from './trace-reader';
import type { Alignment } from './trace-state';

/** Where a pull is laid over the others, and what the moment is. */
export interface Onset {
  readonly timeS: number;
  readonly basis: 'full-load' | 'target' | 'settled';
}

const SHARE = 0.9;

/**
 * The moment that pulls are laid over each other by: where full load begins, or where the filtered boost first
 * reaches 90 % of target (design: onset). A pull without a target takes that of the other pulls of the log, else its
 * own settled boost or peak.
 *
 * @returns null while the samples have not come, or where the pull never got so far
 */
export function onsetOfPull(
  index: TraceIndex,
  reader: TraceReader,
  number: number,
  alignment: Alignment,
): Onset | null {
  const pull = index.pulls[number];
  if (pull === undefined) return null;
  if (alignment === 'full-load') return { timeS: pull.startS, basis: 'full-load' };
  const target = pull.record?.targetKpa ?? commonTarget(index);
  const level = target ?? pull.settledKpa ?? pull.peakKpa;
  if (level === null) return null;
  const timeS = firstReach(index, reader, pull, SHARE * level);
  return timeS === null ? null : { timeS, basis: target === null ? 'settled' : 'target' };
}

/** The target of the pulls in the book, where they have one and the same. */
function commonTarget({ pulls }: TraceIndex): number | null {
  const targets = new Set(pulls.flatMap(({ record }) => record?.targetKpa ?? []));
  const [only] = targets;
  return targets.size === 1 && only !== undefined ? only : null;
}

/** When the filtered boost first reaches a level, linear between samples. */
function firstReach(
  index: TraceIndex,
  reader: TraceReader,
  { startS, endS }: TraceIndex['pulls'][number],
  levelKpa: number,
): number | null {
  const rows = reader.rowsOf(startS, endS);
  if (rows === null) return null;
  let [beforeS, beforeKpa] = [NaN, NaN];
  let reachedS: number | null = null;
  let isWhole = true;
  reader.visit(filteredChannel(index) ?? 0, rows, 0, ({ times, lows, first, end, rowsPerBin }) => {
    if (rowsPerBin > 1) isWhole = false;
    for (let bin = first; bin < end && isWhole && reachedS === null; bin += 1) {
      const [timeS, kpa] = [times[bin] as number, lows[bin] as number];
      if (Number.isNaN(kpa) || timeS < startS || timeS > endS) continue;
      if (kpa >= levelKpa) {
        const share = (levelKpa - beforeKpa) / (kpa - beforeKpa);
        reachedS = Number.isNaN(beforeS) ? timeS : beforeS + share * (timeS - beforeS);
      }
      [beforeS, beforeKpa] = [timeS, kpa];
    }
  });
  return isWhole ? reachedS : null;
}

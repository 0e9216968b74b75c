/** Scatter of pulls at one setting on one visit, relative to their mean. */
export interface EarlierSpread {
  /** Sum of squared relative distances from the mean. */
  readonly squares: number;
  readonly degreesOfFreedom: number;
}

/** A pull with the visit that it was made in. */
interface VisitedPull {
  readonly visitId: string;
  readonly dutyPct: number;
  readonly holdPct: number | null;
  readonly overrideOn: boolean | null;
  readonly peakKpa: number;
  readonly usable: boolean;
}

/**
 * How far the peaks of a preset scattered on the visits before the newest: pulls at the same duty, gate hold and
 * override, visit by visit, so that neither a setting nor a season is taken for scatter (repeatability, ISO 5725-2).
 */
export function earlierSpreads(
  pulls: readonly VisitedPull[],
  newestVisitId: string | undefined,
): EarlierSpread[] {
  const groups = new Map<string, number[]>();
  for (const pull of pulls) {
    if (!pull.usable || pull.peakKpa <= 0 || pull.visitId === newestVisitId) continue;
    const key = [pull.visitId, pull.dutyPct, pull.holdPct, pull.overrideOn].join(' ');
    groups.set(key, [...(groups.get(key) ?? []), pull.peakKpa]);
  }
  return [...groups.values()].filter((peaks) => peaks.length > 1).map(spreadOf);
}

function spreadOf(peaksKpa: readonly number[]): EarlierSpread {
  const meanKpa = peaksKpa.reduce((sum, peakKpa) => sum + peakKpa, 0) / peaksKpa.length;
  const squares = peaksKpa.reduce((sum, peakKpa) => sum + (peakKpa / meanKpa - 1) ** 2, 0);
  return { squares, degreesOfFreedom: peaksKpa.length - 1 };
}

import { findRoot } from '../numerics/find-root.js';
import { requireNumber } from '../require-number.js';
import type { CompressorMap, SpeedLine } from './compressor-map.js';

/** A running point in the map's own reference air. */
export interface MapPoint {
  readonly correctedFlowKgPerS: number;
  readonly pressureRatio: number;
}

/** Where a running point lies. */
export type MapPlace = 'inside' | 'beyond-surge' | 'beyond-choke' | 'above-map' | 'below-map';

/** A running point on the map. */
export interface MapLocation {
  readonly place: MapPlace;
  /** Flow above the surge flow at the same pressure ratio, % of the surge flow; negative beyond surge. */
  readonly surgeMarginPct: number | null;
  /** Flow still left up to choke at the same pressure ratio, % of the choke flow; negative beyond choke. */
  readonly chokeMarginPct: number | null;
  /** Between the speed lines, null outside the map. */
  readonly shaftSpeedRpm: number | null;
  /** Null outside the map or without efficiencies in it. */
  readonly efficiencyRatio: number | null;
}

/**
 * Where a running point lies on a compressor map, with its margins to surge and to choke.
 *
 * @param point corrected flow above 0, kg/s, in the map's reference air; pressure ratio from 1
 * @returns place and margins at constant pressure ratio; speed and efficiency between the lines
 * @throws NotFiniteError, OutOfRangeError
 * Source: margins at constant pressure ratio are common practice, no source; speed and efficiency by linear
 * interpolation at equal share of the way from surge to choke.
 */
export function locateOnCompressorMap(map: CompressorMap, point: MapPoint): MapLocation {
  const name = 'locateOnCompressorMap';
  const flow = requireNumber(name, 'correctedFlowKgPerS', point.correctedFlowKgPerS, {
    min: 0,
    exclusive: true,
  });
  const ratio = requireNumber(name, 'pressureRatio', point.pressureRatio, { min: 1, max: 10 });
  const { surgeMarginPct, chokeMarginPct } = marginsAt(map, flow, ratio);
  const margins = { surgeMarginPct, chokeMarginPct, shaftSpeedRpm: null, efficiencyRatio: null };
  if (surgeMarginPct !== null && surgeMarginPct < 0) return { place: 'beyond-surge', ...margins };
  if (chokeMarginPct !== null && chokeMarginPct < 0) return { place: 'beyond-choke', ...margins };
  const between = findBetweenLines(map.lines, { flow, ratio });
  if (between !== null) return { place: 'inside', surgeMarginPct, chokeMarginPct, ...between };
  const lowestRatio = Math.min(...(map.lines[0]?.pressureRatios ?? []));
  return { place: ratio <= lowestRatio ? 'below-map' : 'above-map', ...margins };
}

function marginsAt(
  map: CompressorMap,
  flow: number,
  ratio: number,
): Pick<MapLocation, 'surgeMarginPct' | 'chokeMarginPct'> {
  const surgeFlow = flowAtRatio(surgeBoundary(map), ratio);
  const chokeFlow = flowAtRatio(chokeBoundary(map), ratio);
  return {
    surgeMarginPct: surgeFlow === null ? null : (100 * (flow - surgeFlow)) / surgeFlow,
    chokeMarginPct: chokeFlow === null ? null : (100 * (chokeFlow - flow)) / chokeFlow,
  };
}

interface BoundaryPoint {
  readonly ratio: number;
  readonly flow: number;
}

function surgeBoundary(map: CompressorMap): BoundaryPoint[] {
  return map.lines.map((line) => ({
    ratio: line.pressureRatios[0] ?? NaN,
    flow: line.flowsKgPerS[0] ?? NaN,
  }));
}

/** The choke ends of all lines, then the fastest line from its choke end back up to its highest ratio. */
function chokeBoundary(map: CompressorMap): BoundaryPoint[] {
  const boundary = map.lines.map((line) => ({
    ratio: line.pressureRatios.at(-1) ?? NaN,
    flow: line.flowsKgPerS.at(-1) ?? NaN,
  }));
  const fastest = map.lines.at(-1);
  if (fastest === undefined) return boundary;
  for (let index = fastest.flowsKgPerS.length - 2; index >= 0; index -= 1) {
    const ratio = fastest.pressureRatios[index] ?? NaN;
    if (ratio <= (boundary.at(-1)?.ratio ?? NaN)) break;
    boundary.push({ ratio, flow: fastest.flowsKgPerS[index] ?? NaN });
  }
  return boundary;
}

function flowAtRatio(boundary: readonly BoundaryPoint[], ratio: number): number | null {
  for (let index = 1; index < boundary.length; index += 1) {
    const [from, to] = [boundary[index - 1], boundary[index]];
    if (from === undefined || to === undefined) return null;
    if (ratio < from.ratio || ratio > to.ratio) continue;
    const share = (ratio - from.ratio) / (to.ratio - from.ratio);
    return from.flow + share * (to.flow - from.flow);
  }
  return null;
}

type Between = Pick<MapLocation, 'shaftSpeedRpm' | 'efficiencyRatio'>;

function findBetweenLines(
  lines: readonly SpeedLine[],
  point: { flow: number; ratio: number },
): Between | null {
  for (let index = 1; index < lines.length; index += 1) {
    const [slow, fast] = [lines[index - 1], lines[index]];
    if (slow === undefined || fast === undefined) return null;
    const found = findBetween(slow, fast, point);
    if (found !== null) return found;
  }
  return null;
}

function findBetween(
  slow: SpeedLine,
  fast: SpeedLine,
  point: { flow: number; ratio: number },
): Between | null {
  const shareAt = (weight: number): number => {
    const surge = blend(slow.flowsKgPerS[0], fast.flowsKgPerS[0], weight);
    const choke = blend(slow.flowsKgPerS.at(-1), fast.flowsKgPerS.at(-1), weight);
    return (point.flow - surge) / (choke - surge);
  };
  const valueAt = (weight: number, of: (line: SpeedLine) => readonly number[]): number => {
    const share = Math.min(1, Math.max(0, shareAt(weight)));
    return blend(alongLine(slow, of(slow), share), alongLine(fast, of(fast), share), weight);
  };
  const miss = (weight: number): number => valueAt(weight, (line) => line.pressureRatios) - point.ratio;
  if (miss(0) > 0 || miss(1) < 0) return null;
  const weight = findRoot(miss, { low: 0, high: 1 }).x;
  const share = shareAt(weight);
  if (share < 0 || share > 1) return null;
  const hasEfficiency = slow.efficiencyRatios !== null && fast.efficiencyRatios !== null;
  return {
    shaftSpeedRpm: blend(slow.shaftSpeedRpm, fast.shaftSpeedRpm, weight),
    efficiencyRatio: hasEfficiency ? valueAt(weight, (line) => line.efficiencyRatios ?? []) : null,
  };
}

/** Value on a line at a share of its way from surge (0) to choke (1). */
function alongLine(line: SpeedLine, values: readonly number[], share: number): number {
  const flows = line.flowsKgPerS;
  const [first, last] = [flows[0] ?? NaN, flows.at(-1) ?? NaN];
  const flow = first + share * (last - first);
  const right = Math.max(
    1,
    flows.findIndex((value) => value >= flow),
  );
  const [low, high] = [flows[right - 1] ?? NaN, flows[right] ?? NaN];
  return blend(values[right - 1], values[right], (flow - low) / (high - low));
}

function blend(from: number | undefined, to: number | undefined, weight: number): number {
  return (from ?? NaN) * (1 - weight) + (to ?? NaN) * weight;
}

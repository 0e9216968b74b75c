import { linearScale, type Scale } from '../figures/linear-scale.js';
import type { PressureFormat } from '../figures/pressure-format.js';
import { pressureTicks, type PressureTick } from '../figures/pressure-ticks.js';
import { spanOf } from '../figures/span-of.js';
import { textWidth } from '../figures/text-width.js';
import type { DriftFigures, DriftMark } from './drift-figures.js';

/** A stretch of pulls of one visit along the axis. */
export interface VisitStretch {
  readonly visitNumber: number;
  readonly from: number;
  readonly to: number;
}

/** Plot area, scales and where each pull stands. */
export interface DriftGround {
  readonly width: number;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
  readonly y: Scale;
  readonly ticks: readonly PressureTick[];
  /** Middles of the pulls: the baseline's first, then those since. */
  readonly places: readonly number[];
  readonly stretches: readonly VisitStretch[];
  /** Half the room that one pull has. */
  readonly half: number;
  readonly levels: readonly DriftLevel[];
}

/** A level with its name at the right end. */
export interface DriftLevel {
  readonly role: 'wall' | 'target' | 'centre';
  readonly kpa: number;
  readonly text: string;
  readonly weight: number;
}

export const TEXT_SIZE = 13;
const LEAST_SPAN_KPA = 8;
/** Room between two visits, in pulls. */
const GAP = 0.6;

/** Lays out the axis by pulls, visit by visit, and the scale of boost. */
export function driftGround(
  figures: DriftFigures,
  size: { readonly width: number; readonly height: number },
  format: PressureFormat,
): DriftGround {
  const levels = levelsOf(figures, format);
  const span = spanOf(valuesOf(figures), LEAST_SPAN_KPA);
  const top = TEXT_SIZE * 2.6;
  const bottom = size.height - TEXT_SIZE * 1.9;
  const ticks = pressureTicks(span, format, Math.max(2, (bottom - top) / (TEXT_SIZE * 3.2)));
  const widest = Math.max(0, ...ticks.map(({ text }) => textWidth(text, TEXT_SIZE)));
  const left = Math.min(size.width * 0.25, widest + 10);
  const words = Math.max(0, ...levels.map(({ text }) => textWidth(text, TEXT_SIZE)));
  const right = size.width - Math.min(size.width * 0.35, words + 10);
  return {
    ...{ width: size.width, left, right, top, bottom, ticks, levels },
    y: linearScale(span, bottom, top),
    ...placesOf([...figures.baseline, ...figures.since], left, right),
  };
}

function levelsOf(
  { ceilingKpa, targetKpa, centreKpa }: DriftFigures,
  { write }: PressureFormat,
): DriftLevel[] {
  const levels: DriftLevel[] = [
    { role: 'centre', kpa: centreKpa, text: `was ${write(centreKpa)}`, weight: 2 },
  ];
  if (targetKpa !== null) {
    levels.push({ role: 'target', kpa: targetKpa, text: `target ${write(targetKpa)}`, weight: 3 });
  }
  if (ceilingKpa !== null) {
    levels.push({ role: 'wall', kpa: ceilingKpa, text: `ceiling ${write(ceilingKpa)}`, weight: 9 });
  }
  return levels;
}

function valuesOf({
  baseline,
  since,
  centreKpa,
  targetKpa,
  toleranceKpa,
  ceilingKpa,
}: DriftFigures): number[] {
  return [
    centreKpa,
    ...(targetKpa === null ? [] : [targetKpa - toleranceKpa, targetKpa + toleranceKpa]),
    ...(ceilingKpa === null ? [] : [ceilingKpa]),
    ...baseline.map(({ kpa }) => kpa),
    ...since.flatMap(({ kpa, lowKpa, highKpa }) => [kpa, lowKpa, highKpa]),
  ];
}

function placesOf(
  marks: readonly DriftMark[],
  left: number,
  right: number,
): Pick<DriftGround, 'places' | 'stretches' | 'half'> {
  const starts = marks.map((mark, index) => {
    const before = marks[index - 1];
    return before !== undefined && before.visitNumber !== mark.visitNumber;
  });
  const units = marks.length + GAP * starts.filter(Boolean).length;
  const unit = (right - left) / Math.max(1, units);
  let at = left - unit / 2;
  const places = starts.map((isStart) => (at += unit * (isStart ? 1 + GAP : 1)));
  const stretches: VisitStretch[] = [];
  marks.forEach(({ visitNumber }, index) => {
    const place = places[index] ?? left;
    const open = stretches.at(-1);
    if (open === undefined || starts[index] === true) {
      stretches.push({ visitNumber, from: place - unit / 2, to: place + unit / 2 });
    } else {
      stretches[stretches.length - 1] = { ...open, to: place + unit / 2 };
    }
  });
  return { places, stretches, half: unit / 2 };
}

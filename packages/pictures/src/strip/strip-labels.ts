import type { PressureFormat } from '../figures/pressure-format.js';
import type { Scale } from '../figures/linear-scale.js';
import type { ShapeRole, TextShape } from '../figures/shapes.js';
import { spreadLabels } from '../figures/spread-labels.js';
import { textWidth } from '../figures/text-width.js';
import type { StripFigures, StripSize } from './strip-figures.js';
import type { MarkRoom } from './strip-marks.js';

interface Label {
  readonly role: ShapeRole;
  readonly text: string;
  /** Said instead where there is not room for all of `text`. */
  readonly short: string;
  readonly at: number;
  readonly weight: number;
}

/** Above `GAP` two labels are read as two. */
const GAP = 8;

/** The row of words over the strip: what is known of base, target, next pull and ceiling, or what is missing. */
export function stripLabels(
  figures: StripFigures,
  format: PressureFormat,
  scale: Scale,
  { form, left, right, metrics }: MarkRoom & { readonly form: StripSize['form'] },
): readonly TextShape[] {
  const size = metrics.labelTextSize;
  const labels = form === 'small' ? smallLabels(figures, format, scale) : labelsOf(figures, format, scale);
  const room = { start: left, end: right, gap: GAP };
  const fits = labels.reduce((sum, { text }) => sum + textWidth(text, size) + GAP, -GAP) <= right - left;
  const worded = labels.map((label) => ({ ...label, text: fits ? label.text : label.short }));
  const middles = spreadLabels(
    worded.map((label) => ({ at: label.at, extent: textWidth(label.text, size), weight: label.weight })),
    room,
  );
  return worded.flatMap((label, index) => {
    const x = middles[index];
    if (x === null || x === undefined) return [];
    const weight = label.role === 'wall-text' ? 'bold' : 'normal';
    const y = metrics.labelRow - size * 0.5;
    return [
      { kind: 'text', role: label.role, x, y, text: label.text, size, anchor: 'middle', weight, turn: 0 },
    ] as const;
  });
}

function labelsOf(figures: StripFigures, format: PressureFormat, scale: Scale): readonly Label[] {
  const { baseKpa, targetKpa, toleranceKpa, ceilingKpa, next } = figures;
  const labels: Label[] = [];
  if (baseKpa !== null) {
    const text = `base ${format.write(baseKpa)}`;
    labels.push({ role: 'base-text', text, short: text, at: scale(baseKpa), weight: 2 });
  }
  if (next) {
    const text = `next ${format.write(next.lowKpa)}–${format.write(next.highKpa)}`;
    const at = scale(next.lowKpa / 2 + next.highKpa / 2);
    labels.push({ role: 'next-text', text, short: text, at, weight: 1 });
  }
  if (targetKpa !== null) {
    const short = `target ${format.write(targetKpa)}`;
    const text = `${short} ± ${format.write(toleranceKpa)}`;
    labels.push({ role: 'target-text', text, short, at: scale(targetKpa), weight: 3 });
  }
  if (ceilingKpa !== null) {
    const text = `ceiling ${format.write(ceilingKpa)}`;
    labels.push({ role: 'wall-text', text, short: text, at: scale(ceilingKpa), weight: 9 });
  }
  return [...labels, ...missingLabels(figures)];
}

function smallLabels(figures: StripFigures, format: PressureFormat, scale: Scale): readonly Label[] {
  const { targetKpa, ceilingKpa } = figures;
  const labels: Label[] = [];
  if (targetKpa !== null) {
    const text = format.write(targetKpa);
    labels.push({ role: 'target-text', text, short: text, at: scale(targetKpa), weight: 3 });
  }
  if (ceilingKpa !== null) {
    const text = format.write(ceilingKpa);
    labels.push({ role: 'wall-text', text, short: text, at: scale(ceilingKpa), weight: 9 });
  }
  return [...labels, ...missingLabels(figures)];
}

/** Stands at the far end, where the wall would be. */
function missingLabels({ targetKpa, ceilingKpa }: StripFigures): readonly Label[] {
  if (targetKpa !== null && ceilingKpa !== null) return [];
  const missing = [targetKpa === null ? 'target' : '', ceilingKpa === null ? 'ceiling' : '']
    .filter(Boolean)
    .join(', no ');
  const text = `no ${missing} agreed yet`;
  return [{ role: 'note-text', text, short: `no ${missing}`, at: Number.MAX_SAFE_INTEGER, weight: 8 }];
}

import { layoutPeakStrip, layoutResponseChart, type ChartFigures } from '@pullbook/pictures';
import { writeSentence } from '@pullbook/tuning-math';
import { drawFacts, drawHeading, drawParagraph } from './drawing/blocks.js';
import { makeRoom, type Paper } from './drawing/open-paper.js';
import { drawPicture } from './drawing/picture.js';
import { drawTable } from './drawing/table.js';
import type { JobSheetPreset } from './job-sheet.js';
import type { PaperFormat } from './pressure-format.js';

/** Rows left blank for pulls that are still to come. */
const BLANK_ROWS = 6;
const ROW = 20;
/** A preset begins only where its goal, its strip and a row or two fit below its name. */
export const PRESET_ROOM = 190;
const CHART_HEIGHT = 180;
type DutyRange = ChartFigures['dutyRange'];
/** Common practice, no source. */
const SMALL_STEPS =
  'Small steps: up by at most 10 % duty a pull, less near the target, never past what the ceiling allows.';

/** A preset's goal, its strip, and its table of pulls with blank rows to write in. @returns new y */
export function drawPresetPulls(
  paper: Paper,
  { preset, dutyRange }: { readonly preset: JobSheetPreset; readonly dutyRange: DutyRange | null },
  format: PaperFormat,
  y: number,
): number {
  const { root, left, right } = paper;
  const kind = preset.kind === 'timed-override' ? `, timed override ${preset.holdSeconds ?? ''} s` : '';
  const text = `Slot ${preset.slot}: ${preset.name}${kind}`;
  const picture = layoutPeakStrip(preset.strip, { form: 'paper', width: right - left }, format);
  const follows = PRESET_ROOM;
  let at = drawHeading(paper, root, { tag: 'H2', text, follows }, y + 4);
  if (preset.purpose !== '') at = drawParagraph(paper, root, preset.purpose, at);
  at = drawFacts(paper, root, goalFacts(preset, format), at);
  at = drawParagraph(paper, root, SMALL_STEPS, at);
  at = makeRoom(paper, at, picture.height);
  at += drawPicture(paper, root, picture, { x: left, y: at }) + 6;
  at = drawTable(paper, root, pullTable(preset, format), at) + 12;
  return dutyRange === null ? at : drawResponse(paper, { preset, dutyRange }, format, at);
}

/** The response so far, with room to plot the next pulls by pen. @returns new y */
function drawResponse(
  paper: Paper,
  { preset, dutyRange }: { readonly preset: JobSheetPreset; readonly dutyRange: DutyRange },
  format: PaperFormat,
  y: number,
): number {
  const { root, left, right } = paper;
  const { min, max } = dutyRange;
  const figures = { ...preset.strip, dutyRange: { min, max }, pulls: preset.pulls, curve: [], next: null };
  const size = { form: 'paper', width: right - left, height: CHART_HEIGHT } as const;
  const picture = layoutResponseChart(figures, size, format);
  const text = 'Peak against duty: plot the next pulls here';
  const at = drawHeading(paper, root, { tag: 'H3', text, follows: CHART_HEIGHT }, y);
  return at + drawPicture(paper, root, picture, { x: left, y: at + 2 }) + 12;
}

/** Room to write down a preset that nobody has agreed yet. @returns new y */
export function drawBlankPreset(paper: Paper, format: PaperFormat, y: number): number {
  const { root } = paper;
  const follows = 70 + 3 * ROW;
  let at = drawHeading(paper, root, { tag: 'H2', text: 'Preset to be agreed', follows }, y + 4);
  const blank = (label: string, share: number): { label: string; value: string; share: number } => ({
    label,
    value: '',
    share,
  });
  at = drawFacts(paper, root, [blank('Name and purpose', 0.8), blank('Slot', 0.2)], at);
  const goal = [
    blank(`Target, ${format.unit}`, 0.33),
    blank(`Tolerance, ${format.unit}`, 0.33),
    blank(ceilingLabel(null, format), 0.34),
  ];
  at = drawFacts(paper, root, goal, at);
  at = drawParagraph(paper, root, SMALL_STEPS, at);
  return drawTable(paper, root, pullTable({ pulls: [] }, format), at) + 12;
}

function ceilingLabel(ceilingKpa: number | null, format: PaperFormat): string {
  return ceilingKpa === null
    ? `Ceiling, ${format.unit}: agree before any pull`
    : `Ceiling, ${format.unit}: never pass`;
}

function goalFacts(preset: JobSheetPreset, format: PaperFormat): Parameters<typeof drawFacts>[2] {
  const figure = (kpa: number | null): string => (kpa === null ? '' : format.write(kpa));
  const { targetKpa, toleranceKpa, ceilingKpa, dutyPct, gateHoldPct } = preset;
  const target = targetKpa === null ? '' : `${figure(targetKpa)} ± ${format.write(toleranceKpa)}`;
  return [
    { label: `Target, ${format.unit}`, value: target, share: 0.2 },
    { label: ceilingLabel(ceilingKpa, format), value: figure(ceilingKpa), share: 0.3 },
    { label: 'Duty so far, %', value: dutyPct === null ? '' : String(dutyPct), share: 0.16 },
    { label: 'Gate hold so far, %', value: gateHoldPct === null ? '' : String(gateHoldPct), share: 0.19 },
    { label: 'State', value: preset.state.replace('-', ' '), share: 0.15 },
  ];
}

function pullTable(
  preset: Pick<JobSheetPreset, 'pulls'>,
  format: PaperFormat,
): Parameters<typeof drawTable>[2] {
  const recorded = preset.pulls.map((pull) => [
    String(pull.number),
    String(pull.dutyPct),
    pull.gear === null ? '' : String(pull.gear),
    format.writePeak(pull.peakKpa),
    writeSentence(pull.verdict.pieces, format.unit),
  ]);
  const last = preset.pulls.at(-1)?.number ?? 0;
  const blank = Array.from({ length: BLANK_ROWS }, (_, index) => [String(last + index + 1), '', '', '', '']);
  return {
    columns: [
      { header: 'Pull', share: 0.08, align: 'right' },
      { header: 'Duty %', share: 0.12, align: 'right' },
      { header: 'Gear', share: 0.1, align: 'right' },
      { header: `Peak ${format.unit}`, share: 0.16, align: 'right' },
      { header: 'Verdict, what was heard or seen', share: 0.54 },
    ],
    rows: [...recorded, ...blank],
    rowHeight: ROW,
    isRuled: true,
  };
}

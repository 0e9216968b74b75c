import { layoutPeakStrip, type PressureFormat } from '@pullbook/pictures';
import { drawFacts, drawHeading, drawParagraph } from './drawing/blocks.js';
import { makeRoom, type Paper } from './drawing/open-paper.js';
import { drawPicture } from './drawing/picture.js';
import { drawTable } from './drawing/table.js';
import type { JobSheetPreset } from './job-sheet.js';

/** Rows left blank for pulls that are still to come. */
const BLANK_ROWS = 6;
const ROW = 20;

/** A preset's goal, its strip, and its table of pulls with blank rows to write in. @returns new y */
export function drawPresetPulls(
  paper: Paper,
  preset: JobSheetPreset,
  format: PressureFormat,
  y: number,
): number {
  const { root, left, right } = paper;
  const kind = preset.kind === 'timed-override' ? `, timed override ${preset.holdSeconds ?? ''} s` : '';
  const text = `Slot ${preset.slot}: ${preset.name}${kind}`;
  const picture = layoutPeakStrip(preset.strip, { form: 'paper', width: right - left }, format);
  const follows = 60 + picture.height + 3 * ROW;
  let at = drawHeading(paper, root, { tag: 'H2', text, follows }, y + 4);
  if (preset.purpose !== '') at = drawParagraph(paper, root, preset.purpose, at);
  at = drawFacts(paper, root, goalFacts(preset, format), at);
  at = makeRoom(paper, at, picture.height);
  at += drawPicture(paper, root, picture, { x: left, y: at }) + 6;
  return drawTable(paper, root, pullTable(preset, format), at) + 12;
}

function goalFacts(preset: JobSheetPreset, format: PressureFormat): Parameters<typeof drawFacts>[2] {
  const figure = (kpa: number | null): string => (kpa === null ? '' : format.write(kpa));
  const { targetKpa, toleranceKpa, ceilingKpa, dutyPct, gateHoldPct } = preset;
  const target = targetKpa === null ? '' : `${figure(targetKpa)} ± ${format.write(toleranceKpa)}`;
  return [
    { label: `Target, ${format.unit}`, value: target, share: 0.24 },
    { label: `Ceiling, ${format.unit}: never pass`, value: figure(ceilingKpa), share: 0.24 },
    { label: 'Duty so far, %', value: dutyPct === null ? '' : String(dutyPct), share: 0.18 },
    { label: 'Gate hold so far, %', value: gateHoldPct === null ? '' : String(gateHoldPct), share: 0.18 },
    { label: 'State', value: preset.state.replace('-', ' '), share: 0.16 },
  ];
}

function pullTable(preset: JobSheetPreset, format: PressureFormat): Parameters<typeof drawTable>[2] {
  const recorded = preset.pulls.map((pull) => [
    String(pull.number),
    String(pull.dutyPct),
    pull.gear === null ? '' : String(pull.gear),
    format.write(pull.peakKpa),
    pull.verdict,
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

import { letterheadOf, type Report, type ReportPreset } from '@pullbook/contracts';
import { layoutPeakStrip } from '@pullbook/pictures';
import { drawFacts, drawHeading, drawMind, drawParagraph } from './drawing/blocks.js';
import { makePaper, makeRoom, type Paper } from './drawing/open-paper.js';
import { drawPicture } from './drawing/picture.js';
import { drawTable } from './drawing/table.js';
import { drawTitle } from './drawing/title.js';
import type { PaperChoice } from './job-sheet-pdf.js';
import { pressureFormat, type PaperFormat } from './pressure-format.js';
import { presetWords, sealGroups, sealWords, slotWords, type PresetWords } from './report-words.js';
import { writeInstantAndZone } from './write-instant.js';

/** Where the paper's QR code leads, and what it is for. */
export interface PaperAddress {
  readonly url: string;
  readonly purpose: string;
}

const ROW = 16;

/** What the customer receives on paper, as a tagged PDF. @returns the file */
export async function reportPdf(report: Report, address: PaperAddress, choice: PaperChoice): Promise<Buffer> {
  const letterhead = letterheadOf(report.workshopName, report.paperHeader);
  const options = {
    size: choice.paper,
    title: `Preset report, visit ${report.visitNumber}, ${report.plate}`,
    author: report.workshopName,
    footLines: letterhead.footLines,
    foot: `${report.workshopName} · visit ${report.visitNumber} · ${report.plate}`,
    madeAt: new Date(report.signedAt),
  };
  const format = pressureFormat(choice.pressure);
  return makePaper(options, (paper) => {
    const { root } = paper;
    let y = drawTitle(paper, {
      letterhead,
      title: `Preset report, visit ${report.visitNumber}`,
      plate: report.plate,
      model: report.model,
      url: address.url,
      urlPurpose: address.purpose,
    });
    if (!report.sealHolds)
      y = drawMind(paper, root, { title: 'Mind this first', lines: [sealWords.broken] }, y);
    y = drawMind(paper, root, { title: 'Before you use full boost', lines: report.cautions }, y);
    for (const preset of report.presets) {
      const words = presetWords(report, preset, format);
      y = drawPreset(paper, { preset, words, timeZone: report.paperHeader.timeZone }, format, y);
    }
    drawSignature(paper, report, y);
  });
}

interface PrintedPreset {
  readonly preset: ReportPreset;
  readonly words: PresetWords;
  /** Of the times on this paper. */
  readonly timeZone: string;
}

function drawPreset(
  paper: Paper,
  { preset, words, timeZone }: PrintedPreset,
  format: PaperFormat,
  y: number,
): number {
  const { root, left, right } = paper;
  const picture = layoutPeakStrip(words.strip, { form: 'paper', width: right - left }, format);
  const text = `${words.heading} (${slotWords(preset)})`;
  const follows = 80 + picture.height;
  let at = drawHeading(paper, root, { tag: 'H2', text, follows }, y + 4);
  if (words.purpose !== '') at = drawParagraph(paper, root, `What it is for: ${words.purpose}`, at);
  at = drawParagraph(paper, root, `How to use it: ${words.use}`, at);
  const share = 1 / Math.max(1, words.facts.length);
  at = drawFacts(
    paper,
    root,
    words.facts.map(({ label, value }) => ({ label, value, share })),
    at + 2,
  );
  at = makeRoom(paper, at, picture.height);
  at += drawPicture(paper, root, picture, { x: left, y: at }) + 5;
  at = drawParagraph(paper, root, words.proof, at);
  if (words.lookedOver !== '') at = drawParagraph(paper, root, words.lookedOver, at);
  if (words.pulls.length === 0) return at + 8;
  return drawTable(paper, root, pullTable(words, timeZone, format), at) + 12;
}

function pullTable(
  words: PresetWords,
  timeZone: string,
  format: PaperFormat,
): Parameters<typeof drawTable>[2] {
  return {
    columns: [
      { header: 'Pull', share: 0.1, align: 'right' },
      { header: 'Duty %', share: 0.14, align: 'right' },
      { header: `Peak ${format.unit}`, share: 0.18, align: 'right' },
      { header: 'Engine bay', share: 0.22 },
      { header: 'Recorded', share: 0.36 },
    ],
    rows: words.pulls.map((pull) => [
      String(pull.number),
      String(pull.dutyPct),
      format.writePeak(pull.peakKpa),
      pull.heatSoaked ? 'hot from driving' : 'normal',
      writeInstantAndZone(pull.recordedAt, timeZone),
    ]),
    rowHeight: ROW,
    isRuled: false,
  };
}

function drawSignature(paper: Paper, report: Report, y: number): void {
  const { root } = paper;
  let at = drawHeading(paper, root, { tag: 'H2', text: 'Signed off', follows: 120 }, y + 4);
  const facts = [
    { label: 'By', value: report.signedName, share: 0.5 },
    { label: 'On', value: writeInstantAndZone(report.signedAt, report.paperHeader.timeZone), share: 0.5 },
  ];
  at = drawFacts(paper, root, facts, at);
  const groups = sealGroups(report.sealSha256);
  const half = Math.ceil(groups.length / 2);
  const lines = [groups.slice(0, half), groups.slice(half)].map((line) => line.join('  '));
  at = drawFacts(paper, root, [{ label: 'Seal', value: lines.join('\n'), share: 1 }], at);
  at = drawParagraph(paper, root, report.sealHolds ? sealWords.holds : sealWords.broken, at);
  drawParagraph(paper, root, sealWords.how, at);
}

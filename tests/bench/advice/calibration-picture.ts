import { PROMISED_PCT, type Calibration } from './calibration.js';

const WIDTH = 720;
const LABELS = 190;
const RIGHT = 52;
const TOP = 58;
const ROW = 24;
const FROM_PCT = 30;
const TO_PCT = 100;
const SIZE = 5;

const x = (pct: number): number =>
  LABELS + ((WIDTH - LABELS - RIGHT) * (Math.max(pct, FROM_PCT) - FROM_PCT)) / (TO_PCT - FROM_PCT);

const round = (value: number): string => String(Math.round(value * 10) / 10);

/** Marks by shape as well as by colour: circle for 50 %, square for 80 %, diamond for 95 %. */
const MARKS: readonly ((atX: number, atY: number) => string)[] = [
  (atX, atY) => `<circle class="mark" cx="${round(atX)}" cy="${round(atY)}" r="${SIZE}"/>`,
  (atX, atY) =>
    `<rect class="mark" x="${round(atX - SIZE)}" y="${round(atY - SIZE)}" width="${2 * SIZE}" height="${2 * SIZE}"/>`,
  (atX, atY) =>
    `<path class="mark" d="M${round(atX)} ${round(atY - SIZE - 1)}l${SIZE + 1} ${SIZE + 1}l-${SIZE + 1} ${SIZE + 1}l-${SIZE + 1} -${SIZE + 1}z"/>`,
];

const STYLE = `
text{font:13px system-ui,sans-serif;fill:#1d2528}
.soft{fill:#566368}
.sheet{fill:#fff}
.promise{stroke:#566368;stroke-dasharray:3 4}
.rule{stroke:#e2e6e8}
.whisker{stroke:#0b6e75;stroke-width:1.5}
.mark{fill:#0b6e75}
@media(prefers-color-scheme:dark){
text{fill:#e6ecee}.soft{fill:#9fb0b6}.sheet{fill:#14191b}.promise{stroke:#9fb0b6}.rule{stroke:#2a3336}
.whisker{stroke:#58c3cb}.mark{fill:#58c3cb}}`;

/**
 * A picture of how well predicted ranges held: one row for each kind of car, one mark for each range with the
 * 95 % interval of chance, and a dashed line where it ought to be. Its description says the same in words.
 */
export function calibrationPicture(rows: readonly Calibration[]): string {
  const height = TOP + rows.length * ROW + 34;
  const bottom = TOP + rows.length * ROW;
  const promises = PROMISED_PCT.map(
    (pct) =>
      `<line class="promise" x1="${round(x(pct))}" x2="${round(x(pct))}" y1="${TOP - 8}" y2="${bottom}"/>` +
      `<text x="${round(x(pct))}" y="${TOP - 16}" text-anchor="middle">${pct} % promised</text>`,
  );
  const ticks = [30, 40, 50, 60, 70, 80, 90, 100].map(
    (pct) =>
      `<text class="soft" x="${round(x(pct))}" y="${bottom + 20}" text-anchor="middle">${pct === FROM_PCT ? '≤ ' : ''}${pct}</text>`,
  );
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${WIDTH} ${height}" role="img" aria-labelledby="name what">`,
    '<title id="name">Share of next peaks inside the predicted ranges</title>',
    `<desc id="what">${describe(rows)}</desc>`,
    `<style>${STYLE}</style>`,
    `<rect class="sheet" width="${WIDTH}" height="${height}"/>`,
    `<text class="soft" x="${WIDTH - RIGHT}" y="18" text-anchor="end">share of next peaks inside the range, %</text>`,
    ...promises,
    ...rows.map((row, index) => rowOf(row, TOP + (index + 0.5) * ROW)),
    ...ticks,
    '</svg>',
    '',
  ].join('\n');
}

function rowOf({ name, heldPct, intervalsPct, isChosenByOutcome }: Calibration, y: number): string {
  const label = isChosenByOutcome ? `${name} *` : name;
  const marks = heldPct.map((pct, range) => {
    const [low, high] = intervalsPct[range] ?? [pct, pct];
    const whisker = `<line class="whisker" x1="${round(x(low))}" x2="${round(x(high))}" y1="${round(y)}" y2="${round(y)}"/>`;
    return whisker + (MARKS[range]?.(x(pct), y) ?? '');
  });
  return (
    `<line class="rule" x1="${LABELS}" x2="${WIDTH - RIGHT}" y1="${round(y)}" y2="${round(y)}"/>` +
    `<text x="${LABELS - 14}" y="${round(y + 4.5)}" text-anchor="end">${label}</text>` +
    marks.join('')
  );
}

function describe(rows: readonly Calibration[]): string {
  const say = ({ name, heldPct }: Calibration): string =>
    `${name}: ${heldPct.map((pct, range) => `${pct.toFixed(0)} of ${PROMISED_PCT[range]} %`).join(', ')}`;
  return `Held by the 50, 80 and 95 % ranges. ${rows.map(say).join('. ')}.`;
}

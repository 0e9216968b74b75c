import type { LogOptions } from '@pullbook/tuning-math';
import { AIR_KPA, END_S, START_S } from './base-rows.js';
import { boost, rpm, speed, table, throttle, time, USUAL, usualWith, type Column } from './write-table.js';

/** What must come of a file: an error of this code, or an analysis with these traits. */
export type Expected =
  | { readonly error: string }
  | {
      readonly pulls: number;
      readonly usable?: boolean;
      /** False where the peak is not the base drive's. */
      readonly peakKpa?: number | null;
      readonly reasons?: readonly string[];
      readonly warnings?: readonly string[];
      readonly boostHeader?: string;
      readonly boostUnit?: string;
      readonly startS?: number;
    };

export interface CorpusFile {
  readonly name: string;
  readonly bytes: Uint8Array;
  readonly expected: Expected;
  readonly options?: LogOptions;
}

const KPA_PER_PSI = 6.894757293168361;
const utf8 = (text: string): Uint8Array => new TextEncoder().encode(text);
const good = { pulls: 1, usable: true } as const;

function utf16(text: string, isLittle: boolean, hasMark: boolean): Uint8Array {
  const units = [...(hasMark ? '\uFEFF' : ''), ...text].map((letter) => letter.charCodeAt(0));
  return Uint8Array.from(
    units.flatMap((unit) => (isLittle ? [unit & 255, unit >> 8] : [unit >> 8, unit & 255])),
  );
}

function windows1252(text: string): Uint8Array {
  return Uint8Array.from([...text].map((letter) => letter.charCodeAt(0)));
}

const column = (header: string, cell: Column['cell']): Column => ({ header, cell });
const scaled = (header: string, scale: number, digits: number, offset = 0): Column =>
  column(header, (row) => (row.boostKpa * scale + offset).toFixed(digits));
const clock = (offsetS: number, digits = 2): Column =>
  column('Clock', ({ timeS }) => {
    const total = (offsetS + timeS) % 86_400;
    const two = (value: number): string => String(Math.floor(value)).padStart(2, '0');
    return `${two(total / 3600)}:${two((total / 60) % 60)}:${(total % 60).toFixed(digits).padStart(3 + digits, '0')}`;
  });
const file = (
  name: string,
  text: string | Uint8Array,
  expected: Expected,
  options?: LogOptions,
): CorpusFile => ({
  name,
  bytes: typeof text === 'string' ? utf8(text) : text,
  expected,
  ...(options === undefined ? {} : { options }),
});

const spelling: CorpusFile[] = [
  file('plain.csv', table(USUAL), { ...good, startS: START_S, boostUnit: 'kPa' }),
  file('semicolon-decimal-comma.csv', table(USUAL, { delimiter: ';', comma: true }), good),
  file('semicolon-decimal-point.csv', table(USUAL, { delimiter: ';' }), good),
  file('tabs.txt', table(USUAL, { delimiter: '\t' }), good),
  file('tabs-decimal-comma.txt', table(USUAL, { delimiter: '\t', comma: true }), good),
  file('bars.txt', table(USUAL, { delimiter: '|' }), good),
  file(
    'spaces.txt',
    table(
      [
        column('time_s', time.cell),
        column('boost_kPa', boost.cell),
        column('engine_rpm', rpm.cell),
        column('throttle_%', throttle.cell),
      ],
      { delimiter: ' ' },
    ),
    { pulls: 1 },
  ),
  file(
    'comma-in-quotes.csv',
    table(
      USUAL.map((each) =>
        column(each.header, (row, index) => `"${each.cell(row, index).replace('.', ',')}"`),
      ),
    ),
    good,
  ),
  file('comma-unquoted.csv', table(USUAL, { comma: true }), { error: 'no-table' }),
  file(
    'marks-differ-by-column.csv',
    table(usualWith({ 1: column('Boost (kPa)', (row) => row.boostKpa.toFixed(1).replace('.', ',')) }), {
      delimiter: ';',
    }),
    good,
  ),
  file(
    'thousands-comma.csv',
    table(
      usualWith({
        2: column('Engine speed (rpm)', (row) => `"${Math.round(row.rpm).toLocaleString('en-US')}"`),
      }),
    ),
    good,
  ),
  file(
    'thousands-space.csv',
    table(
      usualWith({
        2: column('Engine speed (rpm)', (row) =>
          Math.round(row.rpm).toLocaleString('en-US').replace(',', ' '),
        ),
      }),
      { delimiter: ';' },
    ),
    good,
  ),
  file(
    'all-quoted.csv',
    table(
      USUAL.map((each) => column(`"${each.header}"`, (row, index) => `"${each.cell(row, index)}"`)),
      { lineEnd: '\r\n' },
    ),
    good,
  ),
  file('trailing-delimiter.csv', table(USUAL, { line: (text) => `${text},` }), good),
  file(
    'padded-cells.csv',
    table(USUAL.map((each) => column(` ${each.header} `, (row, index) => each.cell(row, index).padStart(9)))),
    good,
  ),
  file('crlf.csv', table(USUAL, { lineEnd: '\r\n' }), good),
  file('cr-only.csv', table(USUAL, { lineEnd: '\r' }), good),
  file('no-last-line-end.csv', table(USUAL).trimEnd(), good),
  file(
    'mixed-line-ends.csv',
    table(USUAL, { line: (text, _, index) => (index % 3 === 0 ? `${text}\r` : text) }),
    good,
  ),
  file(
    'blank-lines.csv',
    table(USUAL, { between: ['', ''], line: (text, _, index) => (index % 10 === 0 ? `${text}\n` : text) }),
    good,
  ),
  file(
    'exponents.csv',
    table(usualWith({ 1: column('Boost (kPa)', (row) => row.boostKpa.toExponential(4)) })),
    good,
  ),
  file(
    'signs.csv',
    table(
      usualWith({
        1: column('Boost (kPa)', (row) =>
          row.boostKpa >= 0 ? `+${row.boostKpa.toFixed(1)}` : row.boostKpa.toFixed(1),
        ),
      }),
    ),
    good,
  ),
];

const encodings: CorpusFile[] = [
  file('utf8-mark.csv', `\uFEFF${table(USUAL)}`, good),
  file('utf16-little-mark.csv', utf16(table(USUAL), true, true), good),
  file('utf16-big-mark.csv', utf16(table(USUAL), false, true), good),
  file('utf16-little-no-mark.csv', utf16(table(USUAL), true, false), good),
  file(
    'windows-1252.csv',
    windows1252(table(usualWith({ 5: column('Intake temp (\u00b0C)', (row) => row.intakeC.toFixed(1)) }))),
    good,
  ),
  file(
    'utf8-degrees.csv',
    table(usualWith({ 5: column('Intake temp (°C)', (row) => row.intakeC.toFixed(1)) })),
    good,
  ),
];

const heads: CorpusFile[] = [
  file(
    'preamble.csv',
    table(USUAL, { before: ['Log of a drive', 'Made at the yard', 'Driver;unknown', '', 'Channels follow'] }),
    good,
  ),
  file(
    'preamble-with-numbers.csv',
    table(USUAL, { before: ['Sample rate,20', 'Channels,6', 'Serial,12345'] }),
    good,
  ),
  file(
    'unit-row.csv',
    table(
      [
        column('Time', time.cell),
        column('Boost', boost.cell),
        column('RPM', rpm.cell),
        column('TPS', throttle.cell),
      ],
      { between: ['s,kPa,rpm,%'] },
    ),
    { pulls: 1, boostUnit: 'kPa' },
  ),
  file(
    'unit-row-brackets.csv',
    table(
      [
        column('Time', time.cell),
        scaled('Boost', 1 / KPA_PER_PSI, 3),
        column('RPM', rpm.cell),
        column('TPS', throttle.cell),
      ],
      { between: ['[s],[psi],[rpm],[%]'] },
    ),
    { pulls: 1, boostUnit: 'psi' },
  ),
  file('group-row.csv', table(USUAL, { before: ['Clock,Engine,,Road,,'] }), good),
  file('comments.csv', table(USUAL, { before: ['# log', '# channels: 6'], after: ['# end'] }), good),
  file(
    'repeated-header-row.csv',
    table(USUAL, {
      line: (text, row) =>
        row.timeS === 5 ? `${USUAL.map(({ header }) => header).join(',')}\n${text}` : text,
    }),
    { ...good, warnings: ['rows-of-words'] },
  ),
  file(
    'two-boost-columns.csv',
    table(
      usualWith(
        {},
        column('Boost (kPa)', () => '0.0'),
      ),
    ),
    good,
  ),
  file('comma-in-header.csv', table(usualWith({ 1: column('"Boost, kPa"', boost.cell) })), good),
  file('line-break-in-header.csv', table(usualWith({ 1: column('"Boost\n(kPa)"', boost.cell) })), good),
  file('no-header.csv', table(USUAL, { hasHeader: false }), { error: 'no-pressure-channel' }),
  file(
    'no-header-recipe.csv',
    table(USUAL, { hasHeader: false }),
    { pulls: 1 },
    {
      recipe: {
        columns: [
          { header: 'column 1', quantity: 'time', unit: 's' },
          { header: 'column 2', quantity: 'boost-pressure', unit: 'kPa' },
          { header: 'column 3', quantity: 'engine-speed', unit: 'rpm' },
          { header: 'column 5', quantity: 'throttle', unit: '%' },
        ],
      },
    },
  ),
  file('footer.csv', table(USUAL, { after: ['', 'Highest boost;138', 'End of log'] }), good),
  file(
    'german.csv',
    table(
      [
        column('Zeit [s]', time.cell),
        column('Ladedruck [mbar]', (row) => (row.boostKpa * 10).toFixed(0)),
        column('Motordrehzahl [1/min]', rpm.cell),
        column('Geschwindigkeit [km/h]', speed.cell),
        column('Drosselklappe [%]', throttle.cell),
      ],
      { delimiter: ';', comma: true },
    ),
    { ...good, boostUnit: 'mbar' },
  ),
  file(
    'decoys.csv',
    table([
      time,
      column('Fuel pressure (bar)', () => '3.0'),
      column('Target boost (kPa)', () => '140.0'),
      column('Boost error (kPa)', (row) => (140 - row.boostKpa).toFixed(1)),
      column('Oil pressure (kPa)', () => '400'),
      column('Boost duty (%)', () => '40'),
      boost,
      rpm,
      throttle,
    ]),
    { pulls: 1, boostHeader: 'Boost (kPa)' },
  ),
];

const clocks: CorpusFile[] = [
  file(
    'milliseconds.csv',
    table(usualWith({ 0: column('Time (ms)', (row) => String(Math.round(row.timeS * 1000))) })),
    { ...good, startS: START_S },
  ),
  file(
    'milliseconds-unsaid.csv',
    table(usualWith({ 0: column('Time', (row) => String(Math.round(row.timeS * 1000))) })),
    { ...good, startS: START_S },
  ),
  file(
    'microseconds.csv',
    table(usualWith({ 0: column('Time (us)', (row) => String(Math.round(row.timeS * 1e6))) })),
    { ...good, startS: START_S },
  ),
  file('clock.csv', table(usualWith({ 0: clock(36_000) })), { ...good, startS: START_S }),
  file(
    'clock-with-date.csv',
    table(usualWith({ 0: column('Time', (row, index) => `2026-11-25 ${clock(36_000).cell(row, index)}`) })),
    { ...good, startS: START_S },
  ),
  file('past-midnight.csv', table(usualWith({ 0: clock(86_395) })), { ...good, startS: START_S }),
  file(
    'epoch-milliseconds.csv',
    table(
      usualWith({
        0: column('Timestamp', (row) => String(1_795_600_000_000 + Math.round(row.timeS * 1000))),
      }),
    ),
    { ...good, startS: START_S },
  ),
  file(
    'no-time-known-rate.csv',
    table(USUAL.slice(1)),
    { ...good, startS: START_S, warnings: ['time-from-rate'] },
    { sampleRateHz: 20 },
  ),
  file('no-time-no-rate.csv', table(USUAL.slice(1)), { error: 'no-time' }),
  file(
    'whole-second-stamps.csv',
    table(usualWith({ 0: column('Time (s)', (row) => String(Math.floor(row.timeS))) })),
    { pulls: 1, startS: START_S },
  ),
  file(
    'repeated-stamps.csv',
    table(USUAL, { line: (text, _, index) => (index % 7 === 0 ? `${text}\n${text}` : text) }),
    { ...good, warnings: ['repeated-times'] },
  ),
  file('restarted.csv', table(USUAL) + table(USUAL, { hasHeader: false }), {
    pulls: 2,
    usable: true,
    warnings: ['log-restarted'],
  }),
  file(
    'garbled-stamp.csv',
    table(
      usualWith({ 0: column('Time (s)', (row, index) => (index === 80 ? '9999.00' : row.timeS.toFixed(2))) }),
    ),
    { ...good, warnings: ['rows-without-time'] },
  ),
  file(
    'own-clocks.csv',
    table([time, boost, column('Time 2 (s)', (row) => (row.timeS * 2).toFixed(2)), rpm, throttle]),
    { error: 'several-times' },
  ),
  file(
    'two-clocks-in-step.csv',
    table(
      usualWith(
        {},
        column('Timestamp (ms)', (row) => String(5000 + Math.round(row.timeS * 1000))),
      ),
    ),
    { ...good, startS: START_S },
  ),
  file('empty-time-column.csv', table(usualWith({ 0: column('Time (s)', () => '') })), { error: 'no-time' }),
];

const units: CorpusFile[] = [
  file('psi.csv', table(usualWith({ 1: scaled('Boost (psi)', 1 / KPA_PER_PSI, 2) })), {
    ...good,
    boostUnit: 'psi',
  }),
  file('bar-gauge.csv', table(usualWith({ 1: scaled('Boost [bar rel]', 0.01, 3) })), {
    ...good,
    boostUnit: 'bar',
  }),
  file(
    'absolute-known-air.csv',
    table(usualWith({ 1: scaled('MAP (kPa)', 1, 1, AIR_KPA) })),
    { ...good, boostHeader: 'MAP (kPa)' },
    { barometricAbsKpa: AIR_KPA },
  ),
  file(
    'absolute-logged-air.csv',
    table(
      usualWith(
        { 1: scaled('MAP (kPa)', 1, 1, AIR_KPA) },
        column('Baro (kPa)', () => String(AIR_KPA)),
      ),
    ),
    good,
  ),
  file('absolute-unknown-air.csv', table(usualWith({ 1: scaled('MAP (kPa)', 1, 1, AIR_KPA) })), {
    pulls: 1,
    peakKpa: 138 + AIR_KPA - 101.325,
    reasons: ['peak-uncertain'],
    warnings: ['air-pressure-assumed'],
  }),
  file(
    'absolute-mbar.csv',
    table(usualWith({ 1: scaled('Manifold pressure (mbar abs)', 10, 0, 10 * AIR_KPA) })),
    { ...good, boostUnit: 'mbar' },
    { barometricAbsKpa: AIR_KPA },
  ),
  file('unsaid-kpa.csv', table(usualWith({ 1: scaled('Boost', 1, 1) })), {
    ...good,
    boostUnit: 'kPa',
    warnings: ['pressure-unit-assumed'],
  }),
  file('unsaid-psi.csv', table(usualWith({ 1: scaled('Boost', 1 / KPA_PER_PSI, 2) })), {
    ...good,
    boostUnit: 'psi',
    warnings: ['pressure-unit-assumed'],
  }),
  file('unsaid-bar.csv', table(usualWith({ 1: scaled('Boost', 0.01, 3) })), {
    ...good,
    boostUnit: 'bar',
    warnings: ['pressure-unit-assumed'],
  }),
  file('unsaid-mbar.csv', table(usualWith({ 1: scaled('Boost', 10, 0) })), {
    ...good,
    boostUnit: 'mbar',
    warnings: ['pressure-unit-assumed'],
  }),
  file('psi-that-is-kpa.csv', table(usualWith({ 1: scaled('Boost (psi)', 1, 1) })), {
    pulls: 1,
    usable: false,
    peakKpa: null,
    reasons: ['pressure-doubtful'],
  }),
  file('bar-that-is-kpa.csv', table(usualWith({ 1: scaled('Boost (bar)', 1, 1) })), {
    pulls: 1,
    usable: false,
    peakKpa: null,
    reasons: ['pressure-doubtful'],
  }),
  file('absolute-that-is-gauge.csv', table(usualWith({ 1: scaled('MAP (kPa abs)', 1, 1) })), {
    pulls: 1,
    usable: false,
    peakKpa: null,
    reasons: ['pressure-doubtful'],
  }),
  file(
    'unit-in-cells.csv',
    table(usualWith({ 1: column('Boost', (row) => `${(row.boostKpa / KPA_PER_PSI).toFixed(2)} psi`) })),
    { ...good, boostUnit: 'psi' },
  ),
  file(
    'miles-and-fahrenheit.csv',
    table(
      usualWith({
        3: column('Speed (mph)', (row) => (row.kmh / 1.609344).toFixed(1)),
        5: column('IAT (F)', (row) => (row.intakeC * 1.8 + 32).toFixed(1)),
      }),
    ),
    good,
  ),
  file(
    'thousands-of-rpm.csv',
    table(usualWith({ 2: column('RPM x1000', (row) => (row.rpm / 1000).toFixed(3)) })),
    good,
  ),
  file(
    'throttle-as-share.csv',
    table(usualWith({ 4: column('Throttle', (row) => (row.throttlePct / 100).toFixed(3)) })),
    good,
  ),
  file(
    'throttle-in-volts.csv',
    table(usualWith({ 4: column('TPS (V)', (row) => (0.5 + row.throttlePct * 0.04).toFixed(3)) })),
    good,
  ),
  file('pedal-only.csv', table(usualWith({ 4: column('Pedal (%)', throttle.cell) })), good),
];

const samples: CorpusFile[] = [
  file(
    'slower-boost-empty-cells.csv',
    table(
      usualWith({
        1: column('Boost (kPa)', (row, index) => (index % 2 === 0 ? row.boostKpa.toFixed(1) : '')),
      }),
    ),
    good,
  ),
  file(
    'words-for-missing.csv',
    table(
      usualWith({
        5: column('Intake temp (C)', (row, index) =>
          index % 5 === 0 ? 'n/a' : index % 7 === 0 ? '---' : row.intakeC.toFixed(1),
        ),
      }),
    ),
    good,
  ),
  file(
    'spikes.csv',
    table(
      usualWith({
        1: column('Boost (kPa)', (row, index) => (index % 37 === 5 ? '999.0' : row.boostKpa.toFixed(1))),
      }),
    ),
    { pulls: 1, reasons: ['spikes-removed'] },
  ),
  file(
    'stuck-at-top.csv',
    table(
      usualWith({
        1: column('Boost (kPa)', (row) =>
          row.timeS > 2.9 && row.timeS < 4 ? '100.3' : row.boostKpa.toFixed(1),
        ),
      }),
    ),
    { pulls: 1, usable: false, peakKpa: null, reasons: ['samples-stuck'] },
  ),
  file(
    'hole-at-top.csv',
    table(USUAL, { line: (text, row) => (row.timeS > 3.6 && row.timeS < 4.6 ? null : text) }),
    { pulls: 1, usable: false, peakKpa: null, reasons: ['samples-missing'] },
  ),
  file(
    'clipped.csv',
    table(usualWith({ 1: column('Boost (kPa)', (row) => Math.min(row.boostKpa, 110).toFixed(1)) })),
    { pulls: 1, usable: false, peakKpa: 110, reasons: ['sensor-full-scale'] },
  ),
  file(
    'lifted.csv',
    table(USUAL, { shape: { throttleAt: (timeS) => (timeS > 4.6 && timeS < 5 ? 20 : 100) } }),
    { pulls: 1, usable: false, reasons: ['lifted'] },
  ),
  file('short.csv', table(USUAL, { shape: { endS: START_S + 1.4 } }), {
    pulls: 1,
    usable: false,
    peakKpa: null,
    reasons: ['short'],
  }),
  file('second-gear.csv', table(USUAL, { shape: { gearRpmPerKmh: 72 } }), {
    pulls: 1,
    usable: true,
    reasons: ['gear-doubtful'],
  }),
  file(
    'second-gear-known-ratios.csv',
    table(USUAL, { shape: { gearRpmPerKmh: 72 } }),
    {
      pulls: 1,
      usable: false,
      reasons: ['wrong-gear'],
    },
    { gearRatios: [3.4, 2, 1.35, 1], finalDriveRatio: 4.1, tyreRollingCircumferenceM: 1.9 },
  ),
  file(
    'logged-gear.csv',
    table(
      usualWith(
        {},
        column('Gear', () => '4'),
      ),
    ),
    good,
  ),
  file(
    'short-rows.csv',
    table(USUAL, {
      line: (text, _, index) => (index % 11 === 0 ? text.split(',').slice(0, 4).join(',') : text),
    }),
    { pulls: 1, warnings: ['short-rows'] },
  ),
  file('long-rows.csv', table(USUAL, { line: (text, _, index) => (index % 11 === 0 ? `${text},7` : text) }), {
    ...good,
    warnings: ['long-rows'],
  }),
  file('stray-quote.csv', table(USUAL, { line: (text, _, index) => (index === 30 ? `"${text}` : text) }), {
    pulls: 1,
  }),
  file(
    'formulas.csv',
    table(
      usualWith(
        {},
        column('Note', () => '=1+1'),
      ),
    ),
    good,
  ),
  file(
    'remarks-between.csv',
    table(USUAL, { line: (text, _, index) => (index % 40 === 0 ? `marker set by driver\n${text}` : text) }),
    { ...good, warnings: ['rows-of-words'] },
  ),
  file('one-hertz.csv', table(USUAL, { shape: { rateHz: 1 } }), {
    pulls: 1,
    usable: false,
    peakKpa: null,
    reasons: ['sample-rate-too-low'],
  }),
  file('no-engine-speed.csv', table([time, boost, throttle]), { pulls: 1, warnings: ['no-engine-speed'] }),
  file('no-throttle.csv', table([time, boost, rpm, speed]), { pulls: 1, warnings: ['no-throttle'] }),
  file(
    'cruise-only.csv',
    table(USUAL, { line: (text, row) => (row.timeS < START_S || row.timeS > END_S ? text : null) }),
    { pulls: 0, warnings: ['no-pull'] },
  ),
];

const hopeless: CorpusFile[] = [
  file('empty.csv', '', { error: 'empty-file' }),
  file('blank.csv', '\n\n   \n', { error: 'empty-file' }),
  file('header-only.csv', `${USUAL.map(({ header }) => header).join(',')}\n`, { error: 'no-rows' }),
  file('prose.txt', 'The car pulled well today.\nNothing odd was heard.\n', { error: 'no-rows' }),
  file(
    'picture.csv',
    Uint8Array.from([
      0x89, 0x50, 0x4e, 0x47, 13, 10, 26, 10, 0, 0, 0, 13, 73, 72, 68, 82, 0, 0, 4, 0, 0, 3, 1, 2, 5, 6, 7, 0,
    ]),
    { error: 'not-text' },
  ),
  file('packed.xlsx', Uint8Array.from([0x50, 0x4b, 3, 4, 20, 0, 6, 0, 8, 0, 0, 0, 33, 0]), {
    error: 'not-text',
  }),
  file('settings.json', JSON.stringify({ boost: { target: 140 }, slots: [1, 2, 3] }, null, 2), {
    error: 'no-pressure-channel',
  }),
  file('no-pressure.csv', table([time, rpm, speed, throttle]), { error: 'no-pressure-channel' }),
  file('empty-pressure.csv', table(usualWith({ 1: column('Boost (kPa)', () => '') })), {
    error: 'no-pressure-channel',
  }),
  file('one-column.csv', table([time]), { error: 'no-pressure-channel' }),
];

/** All files of the corpus. */
export const CORPUS: readonly CorpusFile[] = [
  ...spelling,
  ...encodings,
  ...heads,
  ...clocks,
  ...units,
  ...samples,
  ...hopeless,
];

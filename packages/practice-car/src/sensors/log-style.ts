import type { LogChannel } from './log-channel.js';

/** A unit that a style writes a channel in: its spelling, and value = base * scale + offset. */
export interface WrittenUnit {
  readonly spelling: string;
  readonly scale: number;
  readonly offset: number;
  readonly decimals: number;
}

export interface StyleColumn {
  readonly channel: LogChannel;
  readonly name: string;
  readonly unit: WrittenUnit;
}

export type TimeForm = 'seconds' | 'milliseconds' | 'clock' | 'absent';

/** One way in which a logger writes its file. All names are our own. */
export interface LogStyle {
  readonly name: string;
  readonly delimiter: ',' | ';' | '\t';
  readonly decimalMark: '.' | ',';
  readonly lineEnd: '\n' | '\r\n';
  readonly hasByteOrderMark: boolean;
  readonly isQuoted: boolean;
  /** Lines before the header. */
  readonly preamble: readonly string[];
  /** 'row': units on a line of their own; 'bracket', 'paren', 'suffix': in the header's cell; 'none'. */
  readonly unitPlace: 'row' | 'bracket' | 'paren' | 'suffix' | 'none';
  readonly time: { readonly form: TimeForm; readonly name: string };
  readonly columns: readonly StyleColumn[];
}

const unit = (spelling: string, decimals: number, scale = 1, offset = 0): WrittenUnit => ({
  spelling,
  scale,
  offset,
  decimals,
});

const KPA_PER_PSI = 6.894757293168361;
const KPA = unit('kPa', 1);
const BAR = unit('bar', 3, 0.01);
const PSI = unit('psi', 2, 1 / KPA_PER_PSI);
const MBAR_ABS = unit('mbar abs', 0, 10);
const RPM = unit('rpm', 0);
const KMH = unit('km/h', 1);
const MPH = unit('mph', 1, 1 / 1.609344);
const MPS = unit('m/s', 2, 1 / 3.6);
const PCT = unit('%', 1);
const CELSIUS = unit('C', 1);
const FAHRENHEIT = unit('F', 1, 1.8, 32);
const NO_UNIT = unit('', 0);
const LAMBDA = unit('lambda', 3);
const DEGREES = unit('deg', 2);

const column = (channel: LogChannel, name: string, written: WrittenUnit): StyleColumn => ({
  channel,
  name,
  unit: written,
});

const PLAIN_FILE = {
  delimiter: ',',
  decimalMark: '.',
  lineEnd: '\n',
  hasByteOrderMark: false,
  isQuoted: false,
  preamble: [],
} as const;

/** Ways of writing that cover separators, decimal marks, unit places, time forms and pressure references. */
export const LOG_STYLES: readonly LogStyle[] = [
  {
    ...PLAIN_FILE,
    name: 'bench',
    unitPlace: 'bracket',
    time: { form: 'seconds', name: 'Time' },
    columns: [
      column('boost', 'Boost', unit('kPa gauge', 1)),
      column('engineSpeed', 'Engine speed', RPM),
      column('vehicleSpeed', 'Vehicle speed', KMH),
      column('undrivenSpeed', 'Undriven wheel speed', KMH),
      column('throttle', 'Throttle', PCT),
      column('intakeTemperature', 'Intake temperature', CELSIUS),
      column('duty', 'Solenoid duty', PCT),
      column('lambda', 'Lambda', LAMBDA),
      column('knockRetard', 'Knock retard', DEGREES),
    ],
  },
  {
    ...PLAIN_FILE,
    name: 'paddock',
    delimiter: ';',
    decimalMark: ',',
    lineEnd: '\r\n',
    hasByteOrderMark: true,
    unitPlace: 'paren',
    time: { form: 'seconds', name: 'Elapsed' },
    columns: [
      column('manifoldAbsolute', 'Manifold pressure', unit('bar abs', 3, 0.01)),
      column('barometer', 'Barometric pressure', BAR),
      column('engineSpeed', 'Engine speed', unit('1/min', 0)),
      column('vehicleSpeed', 'Speed', KMH),
      column('throttle', 'Throttle position', PCT),
      column('intakeTemperature', 'Charge air temperature', CELSIUS),
      column('gear', 'Gear', NO_UNIT),
      column('lambda', 'Lambda', LAMBDA),
    ],
  },
  {
    ...PLAIN_FILE,
    name: 'yard',
    delimiter: '\t',
    unitPlace: 'row',
    time: { form: 'milliseconds', name: 'Log time' },
    columns: [
      column('engineSpeed', 'RPM', RPM),
      column('manifoldAbsolute', 'MAP', unit('kPa', 1)),
      column('throttle', 'TPS', PCT),
      column('vehicleSpeed', 'Vehicle speed', MPH),
      column('undrivenSpeed', 'GPS speed', MPH),
      column('intakeTemperature', 'IAT', FAHRENHEIT),
      column('knockRetard', 'Knock retard', DEGREES),
    ],
  },
  {
    ...PLAIN_FILE,
    name: 'pit',
    isQuoted: true,
    lineEnd: '\r\n',
    preamble: ['Practice log', 'Channels, 6', ''],
    unitPlace: 'suffix',
    time: { form: 'clock', name: 'Clock' },
    columns: [
      column('boost', 'Boost pressure', PSI),
      column('engineSpeed', 'Engine speed', RPM),
      column('vehicleSpeed', 'Road speed', MPH),
      column('throttle', 'Throttle', PCT),
      column('intakeTemperature', 'Air temp', FAHRENHEIT),
      column('lambda', 'Air fuel ratio', unit('AFR', 2, 14.7)),
    ],
  },
  {
    ...PLAIN_FILE,
    name: 'lane',
    unitPlace: 'suffix',
    time: { form: 'seconds', name: 'time' },
    columns: [
      column('manifoldAbsolute', 'map', MBAR_ABS),
      column('engineSpeed', 'engine rpm', RPM),
      column('undrivenSpeed', 'gps speed', MPS),
      column('vehicleSpeed', 'wheel speed', MPS),
      column('throttle', 'throttle', PCT),
      column('duty', 'boost solenoid duty', PCT),
    ],
  },
  {
    ...PLAIN_FILE,
    name: 'shed',
    unitPlace: 'none',
    time: { form: 'absent', name: '' },
    columns: [
      column('boost', 'boost', KPA),
      column('engineSpeed', 'rpm', RPM),
      column('vehicleSpeed', 'speed', KMH),
      column('throttle', 'throttle', PCT),
      column('intakeTemperature', 'iat', CELSIUS),
    ],
  },
];

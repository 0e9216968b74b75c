/** A unit as printed in a log: our name for it, and whether it says gauge or absolute. */
export interface PrintedUnit {
  readonly unit: string;
  readonly dimension:
    | 'pressure'
    | 'time'
    | 'rotation'
    | 'speed'
    | 'share'
    | 'temperature'
    | 'mixture'
    | 'angle'
    | 'voltage'
    | 'acceleration'
    | 'length'
    | 'number';
  readonly reference: 'gauge' | 'absolute' | null;
}

const SPELLINGS: Readonly<Record<string, readonly [PrintedUnit['dimension'], string]>> = {
  kPa: ['pressure', 'kpa kilopascal kilopascals'],
  Pa: ['pressure', 'pa pascal'],
  hPa: ['pressure', 'hpa hektopascal'],
  mbar: ['pressure', 'mbar millibar mb'],
  bar: ['pressure', 'bar bars'],
  psi: ['pressure', 'psi lbf/in2 lb/in2 lbs/in2'],
  atm: ['pressure', 'atm'],
  kgfPerCm2: ['pressure', 'kg/cm2 kgf/cm2 kg/cm² kgf/cm²'],
  inHg: ['pressure', 'inhg in.hg "hg in-hg'],
  mmHg: ['pressure', 'mmhg torr'],
  s: ['time', 's sec secs second seconds sek sekunden'],
  ms: ['time', 'ms msec millisecond milliseconds millis'],
  us: ['time', 'us µs μs usec microseconds'],
  min: ['time', 'min minutes'],
  h: ['time', 'hh:mm:ss hh:mm:ss.sss hh:mm:ss.fff hms'],
  rpm: ['rotation', 'rpm 1/min r/min rev/min u/min min-1 min^-1 /min tr/min giri/min upm rev/m'],
  krpm: ['rotation', 'krpm rpm*1000 rpmx1000 x1000rpm 1000rpm'],
  rps: ['rotation', 'rps rev/s r/s hz'],
  radPerS: ['rotation', 'rad/s'],
  kmh: ['speed', 'km/h kmh kph kmph'],
  mph: ['speed', 'mph mi/h miles/h'],
  mPerS: ['speed', 'm/s mps'],
  pct: ['share', '% pct percent prozent per-cent'],
  C: ['temperature', 'c °c degc deg.c celsius oc ℃'],
  F: ['temperature', 'f °f degf deg.f fahrenheit ℉'],
  K: ['temperature', 'k kelvin °k degk'],
  lambda: ['mixture', 'lambda λ la'],
  afr: ['mixture', 'afr :1 afr:1'],
  deg: ['angle', '° deg degrees degree °ca degca °btdc degbtdc btdc grad °kw'],
  V: ['voltage', 'v volt volts'],
  mV: ['voltage', 'mv'],
  mPerS2: ['acceleration', 'm/s2 m/s² m/s^2'],
  g: ['acceleration', 'g'],
  m: ['length', 'm metres meters'],
  ft: ['length', 'ft feet'],
  count: ['number', 'count counts cnt # n'],
};

const BY_SPELLING = new Map<string, PrintedUnit>();
for (const [unit, [dimension, spellings]] of Object.entries(SPELLINGS)) {
  for (const spelling of spellings.split(' '))
    BY_SPELLING.set(spelling, { unit, dimension, reference: null });
}

const REFERENCES = [
  { ends: /[\s_.-]*(?:\(?(?:abs(?:olute?)?|absolut)\)?|\(a\)|\sa)$/, reference: 'absolute' },
  { ends: /[\s_.-]*(?:\(?(?:gauge|gage|rel(?:ative?)?|relativ|ü)\)?|\(g\)|\sg)$/, reference: 'gauge' },
] as const;
const SUFFIXED = /^(kpa|bar|psi|mbar|hpa)([ag])$/;

/**
 * The unit that a piece of text names, or null. Knows the usual spellings in several languages, with
 * brackets, and marks of gauge and absolute behind a pressure (`psig`, `bar(a)`, `kPa abs`).
 *
 * @example unitOfText('[bar rel]') // { unit: 'bar', dimension: 'pressure', reference: 'gauge' }
 * Source: names of units after NIST SP 811 and the SI brochure; other spellings common practice, no source.
 */
export function unitOfText(text: string): PrintedUnit | null {
  const bare = text
    .trim()
    .toLowerCase()
    .replace(/^[[({<]\s*(.*?)\s*[\])}>]$/, '$1')
    .trim();
  const whole = BY_SPELLING.get(bare) ?? BY_SPELLING.get(bare.replaceAll(/\s+/g, ''));
  if (whole !== undefined) return whole;
  const suffixed = SUFFIXED.exec(bare);
  if (suffixed !== null) return withReference(suffixed[1] ?? '', suffixed[2] === 'a' ? 'absolute' : 'gauge');
  for (const { ends, reference } of REFERENCES) {
    if (ends.test(bare)) return withReference(bare.replace(ends, ''), reference);
  }
  return null;
}

function withReference(text: string, reference: 'gauge' | 'absolute'): PrintedUnit | null {
  const unit = BY_SPELLING.get(text.trim());
  return unit?.dimension === 'pressure' ? { ...unit, reference } : null;
}

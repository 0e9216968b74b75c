import { amount, sentence, type Sentence } from '../../sentences/index.js';
import type { LogNotice } from '../log-notice.js';
import { LogError } from '../log-error.js';
import type { LogOptions } from '../log-options.js';
import { noPressure } from './no-pressure.js';
import type { SettledColumn } from './settle-column.js';

/** Boost in kPa gauge, and where it comes from. */
export interface SettledBoost {
  readonly values: Float32Array;
  readonly source: 'gauge-column' | 'absolute-column';
  /** Why its unit or reference is in doubt; null where it is not. */
  readonly doubt: Sentence | null;
  /** Standard uncertainty that all of it shares because air pressure had to be assumed, kPa. */
  readonly airUncertaintyKpa: number;
  readonly notices: readonly LogNotice[];
}

const STANDARD_ATMOSPHERE_KPA = 101.325;
/** Weather and a few hundred metres of height: common practice, no source. */
const ASSUMED_AIR_KPA = 3;
const SOUND_AIR_KPA = { low: 55, high: 110 };

/**
 * Boost from the log's pressure columns: a gauge column as it is, an absolute one less the air pressure
 * (logged; else given; else the standard atmosphere, with a warning).
 *
 * @param headers of the file, to name them where none is a pressure
 * @throws LogError `no-pressure-channel`; `setting-out-of-range` for an air pressure that cannot be
 */
export function settleBoost(
  settled: readonly SettledColumn[],
  options: LogOptions,
  headers: readonly string[],
): SettledBoost {
  const air = airPressure(settled, options);
  const column = chooseColumn(settled);
  if (column === undefined) throw noPressure(headers);
  const { pressure } = column;
  const notices = pressureNotices(column);
  const doubt = pressure?.doubt ?? null;
  if (pressure?.reference !== 'absolute')
    return { values: column.values, source: 'gauge-column', doubt, airUncertaintyKpa: 0, notices };
  const values = column.values.map((valueKpa) => valueKpa - air.absKpa);
  return {
    values,
    source: 'absolute-column',
    doubt,
    airUncertaintyKpa: air.notices.length > 0 ? ASSUMED_AIR_KPA : 0,
    notices: [...notices, ...air.notices],
  };
}

function pressureNotices({ pressure, channel }: SettledColumn): LogNotice[] {
  const name = `column "${channel.header}"`;
  if (pressure?.doubt) {
    return [
      {
        code: 'pressure-doubtful',
        ...sentence`${name}: ${pressure.doubt}; say its unit and kind in the channel recipe before trusting a figure`,
      },
    ];
  }
  if (channel.certain || pressure === null) return [];
  const text = `${name} is taken to be ${pressure.unit} ${pressure.reference}, by its values; the channel recipe settles it`;
  return [{ code: 'pressure-unit-assumed', text }];
}

function chooseColumn(settled: readonly SettledColumn[]): SettledColumn | undefined {
  const boost = settled.find(
    ({ claim, facts }) => claim.quantity === 'boost-pressure' && facts.sampleCount > 0,
  );
  const manifold = settled.find(
    ({ claim, facts }) => claim.quantity === 'manifold-absolute-pressure' && facts.sampleCount > 0,
  );
  if (boost?.pressure?.doubt && manifold !== undefined && manifold.pressure?.doubt === null) return manifold;
  return boost ?? manifold;
}

function airPressure(
  settled: readonly SettledColumn[],
  options: LogOptions,
): { absKpa: number; notices: LogNotice[] } {
  const logged = settled.find(({ claim }) => claim.quantity === 'barometric-pressure')?.facts.middle ?? NaN;
  if (logged >= SOUND_AIR_KPA.low && logged <= SOUND_AIR_KPA.high) return { absKpa: logged, notices: [] };
  const given = options.barometricAbsKpa ?? null;
  if (given !== null) return { absKpa: requireAir(given), notices: [] };
  const taken = amount(STANDARD_ATMOSPHERE_KPA, 'kPa', 3);
  const said = sentence`no air pressure in log or tuning session: ${taken} is taken, boost may be off by ${amount(ASSUMED_AIR_KPA, 'kPa')} (one standard uncertainty)`;
  return { absKpa: STANDARD_ATMOSPHERE_KPA, notices: [{ code: 'air-pressure-assumed', ...said }] };
}

function requireAir(absKpa: number): number {
  if (absKpa >= SOUND_AIR_KPA.low && absKpa <= SOUND_AIR_KPA.high) return absKpa;
  throw new LogError(
    'setting-out-of-range',
    `an air pressure of ${absKpa} kPa absolute cannot be`,
    `give barometricAbsKpa from ${SOUND_AIR_KPA.low} to ${SOUND_AIR_KPA.high}`,
  );
}

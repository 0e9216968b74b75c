import type { ChannelQuantity } from '../channel-quantities.js';
import type { LogNotice } from '../log-notice.js';
import type { LogChannel } from '../log-samples.js';
import { baseConversion, type BaseConversion } from './base-unit.js';
import { columnFacts, type ColumnFacts } from './column-facts.js';
import { describeColumn } from './describe-column.js';
import type { ColumnClaim } from './recognise-columns.js';
import { settlePressure, type SettledPressure } from './settle-pressure.js';

/** A column in base units, and how it was understood. */
export interface SettledColumn {
  readonly claim: ColumnClaim;
  readonly values: Float32Array;
  /** Of the values in base units. */
  readonly facts: ColumnFacts;
  readonly channel: LogChannel;
  readonly pressure: SettledPressure | null;
  readonly notices: readonly LogNotice[];
}

const PRESSURES = new Set([
  'boost-pressure',
  'manifold-absolute-pressure',
  'target-boost-pressure',
  'barometric-pressure',
]);

/**
 * A column in the base unit of its quantity. What no print tells, its values do: shares of 1 or of 100,
 * thousands of r/min, air-fuel ratio or lambda, kelvin or Celsius.
 *
 * @param claim what its head says
 * @param values samples as logged, NaN where missing; converted in place
 */
export function settleColumn(claim: ColumnClaim, values: Float32Array): SettledColumn {
  const raw = columnFacts(values);
  const pressure = PRESSURES.has(claim.quantity) ? settlePressure(claim, raw) : null;
  const unit = pressure?.unit ?? unitOf(claim, raw);
  const certain = pressure?.certain ?? (claim.unit !== null || UNITLESS.has(claim.quantity));
  const conversion = conversionFor(claim, unit, raw);
  convertInPlace(values, conversion);
  return {
    claim,
    values,
    facts: convertFacts(raw, conversion),
    channel: describeColumn(claim, raw, {
      unit,
      certain: claim.byRecipe || certain,
      reference: pressure?.reference ?? null,
      rowCount: values.length,
    }),
    pressure,
    notices: emptyNotice(claim, raw),
  };
}

function unitOf(claim: ColumnClaim, facts: ColumnFacts): string {
  return claim.unit?.unit ?? UNITS_BY_VALUES[claim.quantity]?.(facts) ?? 'none';
}

function emptyNotice(claim: ColumnClaim, facts: ColumnFacts): LogNotice[] {
  if (facts.sampleCount > 0) return [];
  return [{ code: 'empty-column', text: `column "${claim.header}" holds no numbers` }];
}

/** Facts of the converted column; every conversion keeps the order, so none is counted anew. */
function convertFacts(
  facts: ColumnFacts,
  { scale, offset }: Pick<BaseConversion, 'scale' | 'offset'>,
): ColumnFacts {
  return {
    sampleCount: facts.sampleCount,
    lowest: facts.lowest * scale + offset,
    highest: facts.highest * scale + offset,
    low: facts.low * scale + offset,
    middle: facts.middle * scale + offset,
    high: facts.high * scale + offset,
  };
}

function convertInPlace(
  values: Float32Array,
  { scale, offset }: Pick<BaseConversion, 'scale' | 'offset'>,
): void {
  if (scale === 1 && offset === 0) return;
  for (let row = 0; row < values.length; row += 1) values[row] = (values[row] as number) * scale + offset;
}

const UNITLESS = new Set(['gear', 'marker', 'knock-count', 'engine-speed']);

/** Unit that the values of a column without a printed unit speak for, by quantity. */
const UNITS_BY_VALUES: Partial<Record<ChannelQuantity, (facts: ColumnFacts) => string>> = {
  'engine-speed': (facts) => (facts.high < 15 ? 'krpm' : 'rpm'),
  'vehicle-speed': () => 'kmh',
  'undriven-wheel-speed': () => 'kmh',
  throttle: shareUnit,
  pedal: shareUnit,
  'solenoid-duty': shareUnit,
  lambda: (facts) => (facts.middle > 5 ? 'afr' : 'lambda'),
  acceleration: (facts) => (facts.high <= 2 ? 'g' : 'mPerS2'),
  altitude: () => 'm',
  'intake-temperature': temperatureUnit,
  'ambient-temperature': temperatureUnit,
  'coolant-temperature': temperatureUnit,
  'oil-temperature': temperatureUnit,
  'exhaust-temperature': () => 'C',
};

function shareUnit(facts: ColumnFacts): string {
  return facts.high <= 1.2 ? 'fraction' : 'pct';
}

function temperatureUnit(facts: ColumnFacts): string {
  return facts.low > 200 ? 'K' : 'C';
}

/** A throttle in volts is scaled so that its highest lasting value is full throttle. */
function conversionFor(
  claim: ColumnClaim,
  unit: string,
  facts: ColumnFacts,
): { scale: number; offset: number } {
  const isPosition = claim.quantity === 'throttle' || claim.quantity === 'pedal';
  if (isPosition && (unit === 'V' || unit === 'mV')) {
    const span = facts.high - facts.low;
    return span > 0 ? { scale: 100 / span, offset: (-100 * facts.low) / span } : { scale: 0, offset: 100 };
  }
  return baseConversion(unit);
}

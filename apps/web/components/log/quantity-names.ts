import type { ChannelQuantity } from '@pullbook/contracts';

/** What a column can hold, in words, in the order in which a tuner looks for them. */
export const quantityNames: Readonly<Record<ChannelQuantity, string>> = {
  unknown: 'left aside',
  time: 'time',
  'boost-pressure': 'boost (gauge)',
  'manifold-absolute-pressure': 'manifold pressure (absolute)',
  'barometric-pressure': 'air pressure',
  'target-boost-pressure': 'boost asked for',
  'engine-speed': 'engine speed',
  'vehicle-speed': 'road speed',
  'undriven-wheel-speed': 'speed of undriven wheels',
  throttle: 'throttle',
  pedal: 'pedal',
  gear: 'gear',
  'solenoid-duty': 'solenoid duty',
  lambda: 'mixture',
  'knock-retard': 'knock retard',
  'knock-count': 'knock count',
  'ignition-advance': 'ignition advance',
  'intake-temperature': 'intake temperature',
  'ambient-temperature': 'outside temperature',
  'coolant-temperature': 'coolant temperature',
  'oil-temperature': 'oil temperature',
  'exhaust-temperature': 'exhaust temperature',
  acceleration: 'acceleration',
  altitude: 'altitude',
  marker: 'marker',
};

const unitNames: Readonly<Record<string, string>> = {
  rpm: 'r/min',
  krpm: '1000 r/min',
  rps: 'rev/s',
  radPerS: 'rad/s',
  kmh: 'km/h',
  mPerS: 'm/s',
  mPerS2: 'm/s²',
  pct: '%',
  fraction: 'share, 0 to 1',
  C: '°C',
  F: '°F',
  kgfPerCm2: 'kgf/cm²',
  us: 'µs',
  day: 'days',
  'h:min:s': 'clock, h:min:s',
  afr: 'air-fuel ratio',
  deg: '°',
  gear: 'number',
  none: '–',
};

/** A unit as people write it. */
export const unitName = (unit: string): string => unitNames[unit] ?? unit;

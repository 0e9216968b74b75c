/** What a column of a log can hold, and the unit that its samples have inside (base unit). */
export const CHANNEL_QUANTITIES = {
  time: 's',
  'boost-pressure': 'kPa',
  'manifold-absolute-pressure': 'kPa',
  'barometric-pressure': 'kPa',
  'target-boost-pressure': 'kPa',
  'engine-speed': 'rpm',
  'vehicle-speed': 'kmh',
  'undriven-wheel-speed': 'kmh',
  throttle: 'pct',
  pedal: 'pct',
  gear: 'gear',
  'intake-temperature': 'C',
  'ambient-temperature': 'C',
  'coolant-temperature': 'C',
  'oil-temperature': 'C',
  'exhaust-temperature': 'C',
  lambda: 'lambda',
  'knock-retard': 'deg',
  'knock-count': 'count',
  'ignition-advance': 'deg',
  'solenoid-duty': 'pct',
  acceleration: 'mPerS2',
  altitude: 'm',
  marker: 'none',
  unknown: 'none',
} as const satisfies Record<string, string>;

/** Name of what a column holds: a key of `CHANNEL_QUANTITIES`. */
export type ChannelQuantity = keyof typeof CHANNEL_QUANTITIES;
